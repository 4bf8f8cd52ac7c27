package org.scrubline.scoring.estimate;

import java.util.Arrays;
import org.scrubline.scoring.Require;

/**
 * Over-dispersion of a funnel: phi, the mean squared z score, about 1 when units differ by chance alone.
 *
 * <p>Winsorising rule: z scores beyond the quantiles {@code share} and 1 - {@code share} (definition R7) are set to
 * them before squaring, so that a few outlying units do not hide themselves. Spiegelhalter, Stat Med 2005;24:1185,
 * doi:10.1002/sim.1970.
 */
public final class FunnelDispersion {
    private FunnelDispersion() {}

    /** Phi of the z scores as they are; at least one. */
    public static double raw(double... zScores) {
        Require.finite("The list of units", zScores, 1);
        return Arrays.stream(zScores).map(z -> z * z).average().orElse(0);
    }

    /** Phi after winsorising, {@code share} from 0 to below .5 on each side. */
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
