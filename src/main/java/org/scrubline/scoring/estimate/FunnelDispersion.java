package org.scrubline.scoring.estimate;

import java.util.Arrays;
import org.scrubline.scoring.Require;

/**
 * Over-dispersion of a funnel: phi, the mean squared z score of the units, about 1 when they differ by chance alone.
 * Limits widened by sqrt(phi) allow for it.
 *
 * <p>Winsorising rule: z scores beyond the quantiles {@code share} and 1 - {@code share} (definition {@link
 * Quantile#R7}) are set to them before squaring, so that a few outlying units do not hide themselves. Spiegelhalter,
 * Stat Med 2005;24:1185, doi:10.1002/sim.1970.
 */
public final class FunnelDispersion {
    private FunnelDispersion() {}

    /**
     * {@return phi of the z scores as they are, 0 or more; for one unit its z²}
     *
     * @param zScores one a unit, at least one, see {@link FunnelLimits#zScore}
     * @throws IllegalArgumentException when there is none or one is no number
     */
    public static double raw(double... zScores) {
        Require.finite("The list of units", zScores, 1);
        return Arrays.stream(zScores).map(z -> z * z).average().orElse(0);
    }

    /**
     * {@return phi after winsorising, 0 or more}
     *
     * @param share of the units on each side, from 0 (as they are) to below .5
     * @param zScores one a unit, at least one
     * @throws IllegalArgumentException when the share is out of its range, or there is no z score or one is no number
     */
    public static double winsorised(double share, double... zScores) {
        Require.that(share >= 0 && share < 0.5, "The winsorised share must lie from 0 to below 0.5, but is %s.", share);
        Require.finite("The list of units", zScores, 1);
        double low = Quantile.R7.of(share, zScores);
        double high = Quantile.R7.of(1 - share, zScores);
        return raw(Arrays.stream(zScores)
                .map(z -> Math.max(low, Math.min(high, z)))
                .toArray());
    }
}
