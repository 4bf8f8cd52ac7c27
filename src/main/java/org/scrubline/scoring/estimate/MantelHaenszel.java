package org.scrubline.scoring.estimate;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;

/**
 * Comparison of two groups on a yes-or-no result within strata: a common odds ratio, and whether it is common.
 *
 * <p>Each stratum is {{a, b}, {c, d}}: rows are the groups, columns yes and no, n its sum. Odds ratio: sum(a d / n) /
 * sum(b c / n), its interval on the log scale with the variance of Robins, Breslow and Greenland; test of 1 with and
 * without a correction of .5 (left out when the difference is smaller); homogeneity by Woolf, with .5 added to every
 * cell so that empty cells need no exception (Haldane). The crude ratio pools the strata and may point the other way.
 *
 * <p>Strata with fewer than two people carry nothing in the ratio, its interval and the test. Woolf's statistic counts
 * every stratum given, an empty one with the odds ratio 1 and the weight 1/8, and its degrees of freedom with it: leave
 * empty strata out before.
 *
 * <p>Mantel and Haenszel, J Natl Cancer Inst 1959;22:719, doi:10.1093/jnci/22.4.719; Robins, Breslow and Greenland,
 * Biometrics 1986;42:311, doi:10.2307/2531052; Woolf, Ann Hum Genet 1955;19:251,
 * doi:10.1111/j.1469-1809.1955.tb01348.x; Haldane, Ann Hum Genet 1956;20:309, doi:10.1111/j.1469-1809.1955.tb01285.x.
 */
public final class MantelHaenszel {
    private final List<double[][]> strata;
    private final OptionalDouble commonRatio;
    private final double logVariance;

    private MantelHaenszel(List<double[][]> strata) {
        this.strata = strata;
        double r = 0;
        double s = 0;
        double pr = 0;
        double cross = 0;
        double qs = 0;
        for (double[][] t : strata) {
            double n = total(t);
            double ri = n == 0 ? 0 : t[0][0] * t[1][1] / n;
            double si = n == 0 ? 0 : t[0][1] * t[1][0] / n;
            double pi = n == 0 ? 0 : (t[0][0] + t[1][1]) / n;
            r += ri;
            s += si;
            pr += pi * ri;
            cross += pi * si + (1 - pi) * ri;
            qs += (1 - pi) * si;
        }
        commonRatio = Ratio.of(r, s);
        logVariance = pr / (2 * r * r) + cross / (2 * r * s) + qs / (2 * s * s);
    }

    /**
     * The comparison.
     *
     * @param strata at least one, each 2 x 2 counts of 0 or more, which need not be whole; the arrays are not copied
     *     and must not change afterwards
     * @return the comparison
     * @throws IllegalArgumentException when there is no stratum, or one is not 2 x 2 or holds a negative count or
     *     something that is no number
     */
    public static MantelHaenszel of(List<double[][]> strata) {
        Require.notEmpty("The list of strata", strata);
        for (double[][] stratum : strata) {
            Require.table("A stratum", stratum, 2, 2);
            Require.that(stratum.length == 2 && stratum[0].length == 2, "A stratum must have 2 rows and 2 columns.");
            for (double[] row : stratum) {
                Require.that(row[0] >= 0 && row[1] >= 0, "A stratum holds a negative count.");
            }
        }
        return new MantelHaenszel(List.copyOf(strata));
    }

    private static double total(double[][] t) {
        return t[0][0] + t[0][1] + t[1][0] + t[1][1];
    }

    /**
     * {@return the common odds ratio, 0 or more; above 1 when the first group's odds of yes are higher; empty when its
     * denominator is 0}
     */
    public OptionalDouble commonRatio() {
        return commonRatio;
    }

    /**
     * {@return the interval of the common ratio, ratio x exp(± z sqrt(variance of its logarithm)); empty when the ratio
     * is 0 or does not exist}
     *
     * @param confidence strictly between 0 and 1
     * @throws IllegalArgumentException when it is not
     */
    public Optional<Interval> interval(double confidence) {
        double z = Distributions.twoSidedZ(confidence);
        if (commonRatio.isEmpty() || !Double.isFinite(logVariance)) {
            return Optional.empty();
        }
        double factor = Math.exp(z * Math.sqrt(logVariance));
        return Optional.of(new Interval(commonRatio.getAsDouble() / factor, commonRatio.getAsDouble() * factor));
    }

    /**
     * {@return the statistic of an odds ratio of 1, (|sum(a - expected a)| - correction)² / sum of hypergeometric
     * variances, chi-squared with 1 degree of freedom; empty when a margin is 0 in every stratum of two or more}
     *
     * @param corrected whether .5 is taken off the difference, when it is that large
     */
    public OptionalDouble chiSquared(boolean corrected) {
        double difference = 0;
        double variance = 0;
        for (double[][] t : strata) {
            double n = total(t);
            if (n > 1) {
                double row = t[0][0] + t[0][1];
                double column = t[0][0] + t[1][0];
                difference += t[0][0] - row * column / n;
                variance += row * (n - row) * column * (n - column) / (n * n * (n - 1));
            }
        }
        double distance = Math.abs(difference);
        double correction = corrected && distance >= 0.5 ? 0.5 : 0;
        return Ratio.of((distance - correction) * (distance - correction), variance);
    }

    /** {@return the odds ratio of all strata pooled; empty when its denominator is 0} */
    public OptionalDouble crudeRatio() {
        double[][] sum = new double[2][2];
        for (double[][] t : strata) {
            for (int i = 0; i < 4; i++) {
                sum[i / 2][i % 2] += t[i / 2][i % 2];
            }
        }
        return Ratio.of(sum[0][0] * sum[1][1], sum[0][1] * sum[1][0]);
    }

    /**
     * {@return Woolf's statistic of equal odds ratios, sum(w (ln r - weighted mean)²) with w the inverse variance of ln
     * r, 0 or more, chi-squared with {@link #woolfDegrees}; empty for a single stratum}
     */
    public OptionalDouble woolf() {
        double weights = 0;
        double sum = 0;
        double squares = 0;
        for (double[][] t : strata) {
            double a = t[0][0] + 0.5;
            double b = t[0][1] + 0.5;
            double c = t[1][0] + 0.5;
            double d = t[1][1] + 0.5;
            double ratio = Math.log(a * d / (b * c));
            double weight = 1 / (1 / a + 1 / b + 1 / c + 1 / d);
            weights += weight;
            sum += weight * ratio;
            squares += weight * ratio * ratio;
        }
        return strata.size() < 2 ? OptionalDouble.empty() : Ratio.finite(Math.max(0, squares - sum * sum / weights));
    }

    /** {@return the degrees of freedom of {@link #woolf}, strata - 1} */
    public int woolfDegrees() {
        return strata.size() - 1;
    }
}
