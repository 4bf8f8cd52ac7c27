package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Agreement of two raters on n subjects in q categories, from the table of their joint results.
 *
 * <p>Kappa = (po - pe) / (1 - pe) with agreement weights w: po = sum of w p, pe = the same with the products of the
 * margins. Weights are agreement weights, 1 on the diagonal; {@link Weights} also makes them from disagreements, which
 * must not be mistaken for them, since reversing them changes the standard error. Standard errors are those of Fleiss,
 * Cohen and Everitt with divisor n: {@code standardError} for an interval, {@code nullError} for a test of kappa = 0.
 * Kappa is empty when chance agreement is already complete (one category). A category nobody used stays in the table
 * and counts in q.
 *
 * <p>Cohen, Educ Psychol Meas 1960;20:37, doi:10.1177/001316446002000104; Cohen, Psychol Bull 1968;70:213,
 * doi:10.1037/h0026256; Fleiss, Cohen and Everitt, Psychol Bull 1969;72:323, doi:10.1037/h0028106.
 */
public final class KappaTable {
    private final double[][] share;
    private final double[] rowShare;
    private final double[] columnShare;
    private final double subjects;
    private final int categories;

    /**
     * A table of counts or of proportions.
     *
     * @param table q x q, first rater in the rows; at least 2 categories, no negative number, not all 0; brought to a
     *     sum of 1
     * @param subjects number of subjects n, above 1; the sum of the table when it holds counts, which is not checked
     * @throws IllegalArgumentException when the table is too small, not square, negative somewhere, empty or holds
     *     something that is no number, or n is not above 1
     */
    public KappaTable(double[][] table, double subjects) {
        Require.table("The agreement table", table, 2, 2);
        Require.that(table.length == table[0].length, "The agreement table must have as many rows as columns.");
        Require.that(subjects > 1, "The agreement table needs more than 1 subject, but n is %s.", subjects);
        this.subjects = subjects;
        categories = table.length;
        share = new double[categories][categories];
        rowShare = new double[categories];
        columnShare = new double[categories];
        double total = total(table);
        Require.that(total > 0, "The agreement table holds no subjects.");
        for (int i = 0; i < categories; i++) {
            for (int j = 0; j < categories; j++) {
                share[i][j] = table[i][j] / total;
                rowShare[i] += share[i][j];
                columnShare[j] += share[i][j];
            }
        }
    }

    private static double total(double[][] table) {
        double total = 0;
        for (double[] row : table) {
            for (double cell : row) {
                Require.that(cell >= 0, "The agreement table holds a negative number, %s.", cell);
                total += cell;
            }
        }
        return total;
    }

    /**
     * Kappa under one set of weights.
     *
     * @param kappa the coefficient, at most 1 when weights are; empty when pe = 1
     * @param observed po, weighted observed agreement
     * @param chance pe, weighted agreement of independent raters with these margins
     * @param standardError for an interval; empty with kappa
     * @param nullError for a test of kappa = 0; empty with kappa
     */
    public record Kappa(
            OptionalDouble kappa,
            double observed,
            double chance,
            OptionalDouble standardError,
            OptionalDouble nullError) {}

    /** {@return the number of categories q} */
    public int categories() {
        return categories;
    }

    /**
     * {@return kappa with the given agreement weights}
     *
     * @param weights named ones, or a matrix made for as many categories
     * @throws IllegalArgumentException when the matrix is made for another number of categories
     */
    public Kappa kappa(Weights weights) {
        double[][] w = weights.matrix(categories);
        double observed = 0;
        double chance = 0;
        double[] rowMean = new double[categories];
        double[] columnMean = new double[categories];
        for (int i = 0; i < categories; i++) {
            for (int j = 0; j < categories; j++) {
                observed += w[i][j] * share[i][j];
                chance += w[i][j] * rowShare[i] * columnShare[j];
                rowMean[i] += w[i][j] * columnShare[j];
                columnMean[j] += w[i][j] * rowShare[i];
            }
        }
        if (1 - chance < 1e-14) {
            return new Kappa(OptionalDouble.empty(), observed, chance, OptionalDouble.empty(), OptionalDouble.empty());
        }
        double kappa = (observed - chance) / (1 - chance);
        double spread = 0;
        double nullSpread = 0;
        for (int i = 0; i < categories; i++) {
            for (int j = 0; j < categories; j++) {
                double mean = rowMean[i] + columnMean[j];
                spread += share[i][j] * TwoWayTable.square(w[i][j] - mean * (1 - kappa));
                nullSpread += rowShare[i] * columnShare[j] * TwoWayTable.square(w[i][j] - mean);
            }
        }
        double centre = kappa - chance * (1 - kappa);
        return new Kappa(
                OptionalDouble.of(kappa),
                observed,
                chance,
                standardError(spread - centre * centre, chance),
                standardError(nullSpread - chance * chance, chance));
    }

    private OptionalDouble standardError(double variance, double chance) {
        return OptionalDouble.of(Math.sqrt(Math.max(0, variance) / subjects) / (1 - chance));
    }

    /**
     * {@return Scott's pi, unweighted: chance agreement from the mean of both margins; empty when it is complete.
     * Scott, Public Opin Q 1955;19:321, doi:10.1086/266577}
     */
    public OptionalDouble scottPi() {
        double chance = 0;
        for (int i = 0; i < categories; i++) {
            chance += TwoWayTable.square(meanShare(i));
        }
        return correctedFor(chance);
    }

    /**
     * {@return Gwet's AC1, unweighted, steadier than kappa when one category dominates: chance agreement is sum m (1 -
     * m) / (q - 1) over the mean margins m, at most 1 / q, so it is never empty. Gwet, Br J Math Stat Psychol
     * 2008;61:29, doi:10.1348/000711006X126600}
     */
    public OptionalDouble gwetAc1() {
        double chance = 0;
        for (int i = 0; i < categories; i++) {
            chance += meanShare(i) * (1 - meanShare(i)) / (categories - 1);
        }
        return correctedFor(chance);
    }

    /**
     * {@return agreement corrected for equally likely categories, chance agreement 1 / q; never empty. Brennan and
     * Prediger, Educ Psychol Meas 1981;41:687, doi:10.1177/001316448104100307}
     */
    public OptionalDouble brennanPrediger() {
        return correctedFor(1.0 / categories);
    }

    /**
     * {@return Krippendorff's alpha for names: Scott's pi with a correction for the number of subjects, pi + (1 - pi) /
     * 2n; empty with pi}
     */
    public OptionalDouble krippendorffNominal() {
        OptionalDouble pi = scottPi();
        return pi.isEmpty() ? pi : OptionalDouble.of(pi.getAsDouble() + (1 - pi.getAsDouble()) / (2 * subjects));
    }

    private double meanShare(int category) {
        return (rowShare[category] + columnShare[category]) / 2;
    }

    private OptionalDouble correctedFor(double chance) {
        double observed = 0;
        for (int i = 0; i < categories; i++) {
            observed += share[i][i];
        }
        return 1 - chance < 1e-14 ? OptionalDouble.empty() : Ratio.of(observed - chance, 1 - chance);
    }
}
