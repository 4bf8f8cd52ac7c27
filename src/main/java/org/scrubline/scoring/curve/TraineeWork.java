package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * One trainee's state and work arrays inside the joint solution. Matrices are row by row. Arrays live as long as the
 * fit, so sweeps allocate nothing.
 */
final class TraineeWork extends TraineeSlice {

    /** Cumulative gap, growth share and walk variance per case. */
    final double[] away;

    final double[] growth;
    final double[] walkVariance;

    /** State: border effects, walk per case, whole-assessment effects; and the Newton step in each. */
    final double[] effect;

    final double[] walk;
    final double[] overall;
    final double[] effectStep;
    final double[] walkStep;
    final double[] overallStep;

    /** Per score: weight; per assessment: gradient of its own effect, its conditional variance, total weight. */
    final double[] weight;

    final double[] overallGradient;
    final double[] overallVariance;
    final double[] totalWeight;

    /** Chain: couplings to the border, pivots, off-diagonals, right-hand side. */
    final double[] coupling;

    final double[] pivot;
    final double[] off;
    final double[] chainSide;

    /** Border matrix (its factor after a sweep), right-hand side, solution, and border step with severities. */
    final double[] matrix;

    final double[] side;
    final double[] solution;
    final double[] combined;

    /** Prior precisions of the border, and of one trainee × supervisor effect. */
    final double[] precision;

    double pairPrecision;

    /** Per step: exp of minus (own effect − difficulty). */
    final double[] stepFactor;

    final double[] profile;
    final double[] residual;
    final double[] thresholdFactor;
    final double[] pairEffect;

    double logLikelihood;
    double penalty;
    double logDeterminant;
    double largestStep;

    /** @param trainee place in the table, or -1 for one without scores */
    TraineeWork(ScoreTable table, int trainee) {
        super(table, trainee);
        away = new double[cases];
        growth = new double[cases];
        walkVariance = new double[cases];
        effect = new double[border];
        walk = new double[cases];
        overall = new double[assessments];
        effectStep = new double[border];
        walkStep = new double[cases];
        overallStep = new double[assessments];
        weight = new double[scores];
        overallGradient = new double[assessments];
        overallVariance = new double[assessments];
        totalWeight = new double[assessments];
        coupling = new double[cases * border];
        pivot = new double[cases];
        off = new double[cases];
        chainSide = new double[cases];
        matrix = new double[border * border];
        side = new double[border];
        solution = new double[border];
        combined = new double[border];
        precision = new double[border];
        stepFactor = new double[steps];
        profile = new double[pairColumn];
        residual = new double[steps];
        thresholdFactor = new double[table.levels + 2];
        pairEffect = new double[supervisors.length];
    }

    /** Lays out everything that depends on the population parameters but not on the state. */
    void prepare(ModelPoint point) {
        double total = 0;
        for (int i = 0; i < cases; i++) {
            double gap = table.gapExcess[caseOffset + i];
            total += gap;
            away[i] = total;
            growth[i] = point.growth(table.experience[caseOffset + i]);
            walkVariance[i] = point.walkVariance(moreExperience(i), gap);
        }
        precision[0] = 1 / point.levelVariance;
        precision[1] = 1 / point.gainVariance;
        Arrays.fill(precision, 2, pairColumn, 1 / point.stepVariance);
        pairPrecision = 1 / point.pairVariance;
        Arrays.fill(precision, pairColumn, border, pairPrecision);
    }

    /** Experience gained since the previous case; the walk starts one case before the first. */
    double moreExperience(int i) {
        double more = i == 0 ? 1 : table.experience[caseOffset + i] - table.experience[caseOffset + i - 1];
        return ModelPoint.leastStep(more);
    }

    /** Moves the state along the last Newton step. */
    void move(double share) {
        Dense.add(effect, 0, effectStep, 0, 0, border, share);
        Dense.add(walk, 0, walkStep, 0, 0, cases, share);
        Dense.add(overall, 0, overallStep, 0, 0, assessments, share);
    }

    /** Sets effects of step difficulty and supervisors as the kernels want them. */
    void lay(ModelPoint point, double[] severity) {
        for (int s = 0; s < steps; s++) {
            double log = Math.max(-90, Math.min(90, point.beta[s] - effect[2 + s]));
            stepFactor[s] = Math.exp(log);
        }
        for (int v = 0; v < supervisors.length; v++) {
            pairEffect[v] = effect[pairColumn + v] - severity[blockSupervisors[v]];
        }
    }

    /** Sets the threshold factors of assessment j of case i at the present state. */
    void thresholds(ModelPoint point, int i, int j) {
        int a = assessmentOffset + j;
        double base = effect[0]
                + (point.gain + effect[1]) * growth[i]
                + walk[i]
                - point.gapLoss * away[i]
                + overall[j]
                + pairEffect[pair[j]];
        for (int x = 0; x < point.gamma.length; x++) {
            base -= point.gamma[x] * table.complexity[a * point.gamma.length + x];
        }
        double scale = Math.exp(-Math.max(-300, Math.min(300, base)));
        int row = table.supervisor[a] * point.stride;
        for (int k = 1; k <= point.levels; k++) {
            thresholdFactor[k] = point.expThreshold[row + k] * scale;
        }
        thresholdFactor[point.levels + 1] = 1e200;
    }
}
