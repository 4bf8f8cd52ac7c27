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
 * <p>Each stratum is {{a, b}, {c, d}}: rows are the groups, columns yes and no. Odds ratio: sum(a d / n) / sum(b c / n),
 * its interval on the log scale with the variance of Robins, Breslow and Greenland; test of 1 with and without a
 * correction of .5 (left out when the difference is smaller); homogeneity by Woolf, with .5 added to every cell so
 * that empty cells need no exception (Haldane). The crude ratio pools the strata and may point the other way. Strata with fewer than two people
 * carry nothing.
 *
 * <p>Mantel and Haenszel, J Natl Cancer Inst 1959;22:719, doi:10.1093/jnci/22.4.719; Robins, Breslow and Greenland,
 * Biometrics 1986;42:311, doi:10.2307/2531052; Woolf, Ann Hum Genet 1955;19:251;
 * Haldane, Ann Hum Genet 1956;20:309.
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

    /** From strata, at least one, of 2 x 2 counts. */
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

    /** The common odds ratio; empty when its denominator is 0. */
    public OptionalDouble commonRatio() {
        return commonRatio;
    }

    /** Its interval; empty when the ratio is 0 or does not exist. */
    public Optional<Interval> interval(double confidence) {
        double z = Distributions.twoSidedZ(confidence);
        if (commonRatio.isEmpty() || !Double.isFinite(logVariance)) {
            return Optional.empty();
        }
        double factor = Math.exp(z * Math.sqrt(logVariance));
        return Optional.of(new Interval(commonRatio.getAsDouble() / factor, commonRatio.getAsDouble() * factor));
    }

    /** Chi-squared, 1 degree of freedom, of an odds ratio of 1; empty when a margin is 0 in every stratum. */
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

    /** The odds ratio of all strata pooled; empty when its denominator is 0. */
    public OptionalDouble crudeRatio() {
        double[][] sum = new double[2][2];
        for (double[][] t : strata) {
            for (int i = 0; i < 4; i++) {
                sum[i / 2][i % 2] += t[i / 2][i % 2];
            }
        }
        return Ratio.of(sum[0][0] * sum[1][1], sum[0][1] * sum[1][0]);
    }

    /** Woolf's chi-squared of equal odds ratios, strata - 1 degrees of freedom; empty for a single stratum. */
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

    /** Degrees of freedom of {@link #woolf}. */
    public int woolfDegrees() {
        return strata.size() - 1;
    }
}
