package org.scrubline.scoring.estimate;

import java.util.Arrays;
import org.scrubline.scoring.Require;

/**
 * Sample quantiles by three of the definitions of Hyndman and Fan, which differ in small samples; say which is used.
 *
 * <p>Each interpolates linearly between the order statistics on both sides of position h, held inside 1 to n, so the
 * answer lies between the smallest and the largest value; with one value it is that value. A position within rounding
 * of a whole number is that number. Hyndman and Fan, Am Stat 1996;50:361, doi:10.1080/00031305.1996.10473566.
 */
public enum Quantile {
    /** h = (n + 1) p, the expectation of the distribution function. */
    R6(1, 0),
    /** h = (n - 1) p + 1, the ends are the sample's ends; common default of spreadsheets. */
    R7(-1, 1),
    /** h = (n + 1/3) p + 1/3, about the median of the quantile whatever the distribution. */
    R8(1.0 / 3, 1.0 / 3);

    private final double extra;
    private final double offset;

    Quantile(double extra, double offset) {
        this.extra = extra;
        this.offset = offset;
    }

    /**
     * {@return the quantile, in the units of the values}
     *
     * @param p probability from 0 to 1, both included
     * @param values at least one number, in any order; not changed
     * @throws IllegalArgumentException when {@code p} is out of its range, or there is no value or one is no number
     */
    public double of(double p, double... values) {
        Require.probability("A probability", p);
        double[] sorted = Require.finite("The sample", values, 1).clone();
        Arrays.sort(sorted);
        double position = Math.max(1, Math.min(sorted.length, (sorted.length + extra) * p + offset));
        int below = (int) Math.floor(position + 4 * Math.ulp(position));
        double share = Math.max(0, position - below);
        double low = sorted[below - 1];
        return share == 0 ? low : low + share * (sorted[below] - low);
    }
}
