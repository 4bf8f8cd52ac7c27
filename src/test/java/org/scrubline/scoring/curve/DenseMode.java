package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The model of {@link CompetencyModel} written down as one large system and solved by a general library, without any of
 * the engine's structure: every unknown a column, every score a row, Newton with the full matrix. For small tables.
 */
final class DenseMode {

    private static final int MOST_STEPS = 300;
    private static final double ENOUGH = 1e-11;

    /** Longest step of one unknown: far from the mode a whole Newton step can miss it. */
    private static final double LONGEST = 1;

    private final ScoreTable table;
    private final Psi psi;
    private final Map<String, Integer> column = new HashMap<>();
    private final List<Double> variance = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private final RealVector mode;
    private final RealMatrix covariance;
    private final double logLikelihood;

    /** One score: its design, the part of the location that is known, and its two thresholds. */
    private record Row(RealVector design, double known, double low, double high) {}

    DenseMode(ScoreTable table, Psi psi) {
        this.table = table;
        this.psi = psi;
        unknowns();
        for (int t = 0; t < table.trainees().size(); t++) {
            for (int i = table.caseStart[t]; i < table.caseStart[t + 1]; i++) {
                for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                    scores(t, i, j);
                }
            }
        }
        RealVector x = new ArrayRealVector(variance.size());
        RealMatrix hessian = derivatives(x, new ArrayRealVector(x.getDimension()));
        double moved = Double.POSITIVE_INFINITY;
        for (int k = 0; k < MOST_STEPS && moved > ENOUGH; k++) {
            RealVector gradient = new ArrayRealVector(x.getDimension());
            hessian = derivatives(x, gradient);
            RealVector step = new CholeskyDecomposition(hessian).getSolver().solve(gradient);
            moved = step.getLInfNorm();
            x = x.add(step.mapMultiply(Math.min(1, LONGEST / Math.max(moved, LONGEST))));
        }
        mode = x;
        covariance = new CholeskyDecomposition(hessian).getSolver().getInverse();
        logLikelihood = laplace(hessian);
    }

    private void unknowns() {
        for (int v = 0; v < table.supervisors().size(); v++) {
            add("severity" + v, square(psi.severitySd()));
        }
        for (int t = 0; t < table.trainees().size(); t++) {
            add("level" + t, square(psi.levelSd()));
            add("gain" + t, square(psi.gainSd()));
            for (int s = 0; s < table.steps().size(); s++) {
                add("step" + t + "," + s, square(psi.stepSd()));
            }
            for (int i = table.caseStart[t]; i < table.caseStart[t + 1]; i++) {
                double more = i == table.caseStart[t] ? 1 : table.experience[i] - table.experience[i - 1];
                add("rise" + i, psi.walk() * Math.max(more, 1e-3) + psi.gapWalk() * table.gapExcess[i]);
                for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                    int v = table.supervisor[j];
                    add(
                            "overall" + j,
                            square(psi.assessmentSd() * Math.exp(psi.halo().get(v))));
                    if (!column.containsKey("pair" + t + "," + v)) {
                        add("pair" + t + "," + v, square(psi.pairSd()));
                    }
                }
            }
        }
    }

    private void add(String unknown, double priorVariance) {
        column.put(unknown, variance.size());
        variance.add(priorVariance);
    }

    private void scores(int t, int i, int j) {
        int v = table.supervisor[j];
        double mean = psi.thresholds().stream().mapToDouble(k -> k).average().orElseThrow();
        double known = growth(table.experience[i]) * psi.gain() - psi.gapLoss() * away(t, i);
        for (int x = 0; x < table.covariates(); x++) {
            known -= psi.complexity().get(x) * table.complexity[j * table.covariates() + x];
        }
        for (int k = table.scoreStart[j]; k < table.scoreStart[j + 1]; k++) {
            int s = table.step[k];
            RealVector design = trainee(t, i);
            design.setEntry(at("step" + t + "," + s), 1);
            design.setEntry(at("pair" + t + "," + v), 1);
            design.setEntry(at("overall" + j), 1);
            design.setEntry(at("severity" + v), -1);
            int low = ScoreTable.lowest(table.span[k]);
            int high = ScoreTable.highest(table.span[k]) + 1;
            double stretch = Math.exp(psi.range().get(v));
            rows.add(new Row(
                    design,
                    known - psi.difficulty().get(s),
                    low == 1 ? Double.NEGATIVE_INFINITY : mean + stretch * (psi.threshold(low) - mean),
                    high > psi.levels() ? Double.POSITIVE_INFINITY : mean + stretch * (psi.threshold(high) - mean)));
        }
    }

    /** Level of trainee t at case i of the table: start, gain and walk. */
    RealVector trainee(int t, int i) {
        RealVector design = new ArrayRealVector(variance.size());
        design.setEntry(at("level" + t), 1);
        design.setEntry(at("gain" + t), growth(table.experience[i]));
        for (int k = table.caseStart[t]; k <= i; k++) {
            design.setEntry(at("rise" + k), 1);
        }
        return design;
    }

    double away(int t, int i) {
        double months = 0;
        for (int k = table.caseStart[t]; k <= i; k++) {
            months += table.gapExcess[k];
        }
        return months;
    }

    static double growth(double experience) {
        return 1 - Math.exp(-experience / 20);
    }

    int at(String unknown) {
        return column.get(unknown);
    }

    private RealMatrix derivatives(RealVector x, RealVector gradient) {
        RealMatrix hessian = new Array2DRowRealMatrix(variance.size(), variance.size());
        for (int r = 0; r < variance.size(); r++) {
            hessian.setEntry(r, r, 1 / variance.get(r));
            gradient.setEntry(r, -x.getEntry(r) / variance.get(r));
        }
        for (Row row : rows) {
            double l = row.known + row.design.dotProduct(x);
            double above = sigmoid(l - row.low);
            double beyond = sigmoid(l - row.high);
            double residual = 1 - above - beyond;
            double weight = above * (1 - above) + beyond * (1 - beyond);
            gradient.combineToSelf(1, residual, row.design);
            int[] used = IntStream.range(0, variance.size())
                    .filter(r -> row.design.getEntry(r) != 0)
                    .toArray();
            for (int r : used) {
                for (int c : used) {
                    hessian.addToEntry(r, c, weight * row.design.getEntry(r) * row.design.getEntry(c));
                }
            }
        }
        return hessian;
    }

    private double laplace(RealMatrix hessian) {
        double sum = 0;
        for (Row row : rows) {
            double l = row.known + row.design.dotProduct(mode);
            sum += Math.log(sigmoid(l - row.low) - sigmoid(l - row.high));
        }
        for (int r = 0; r < variance.size(); r++) {
            sum -= square(mode.getEntry(r)) / variance.get(r) / 2;
            sum -= Math.log(variance.get(r)) / 2;
        }
        double[][] factor = new CholeskyDecomposition(hessian).getL().getData();
        for (int r = 0; r < factor.length; r++) {
            sum -= Math.log(factor[r][r]);
        }
        return sum;
    }

    double logLikelihood() {
        return logLikelihood;
    }

    double mean(RealVector contrast) {
        return contrast.dotProduct(mode);
    }

    double covariance(RealVector a, RealVector b) {
        return a.dotProduct(covariance.operate(b));
    }

    double sd(RealVector contrast) {
        return Math.sqrt(covariance(contrast, contrast));
    }

    /** Most likely location of one score of the table. */
    double location(int k) {
        return rows.get(k).known + rows.get(k).design.dotProduct(mode);
    }

    /** A contrast of one unknown. */
    RealVector one(String unknown) {
        RealVector contrast = new ArrayRealVector(variance.size());
        contrast.setEntry(at(unknown), 1);
        return contrast;
    }

    /** Mean severity of all supervisors of the table. */
    RealVector panel() {
        RealVector contrast = new ArrayRealVector(variance.size());
        for (int v = 0; v < table.supervisors().size(); v++) {
            contrast.setEntry(at("severity" + v), 1.0 / table.supervisors().size());
        }
        return contrast;
    }

    static double sigmoid(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    private static double square(double x) {
        return x * x;
    }
}
