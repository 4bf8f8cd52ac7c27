package org.scrubline.scoring.control;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.scrubline.scoring.Require;

/**
 * The two-sided tabular CUSUM of a measurement: high = max(0, high + x - target - k), low = max(0, low + target - k -
 * x), start 0, signal when either is above the limit (strictly; this chart is not discrete). It does not reset: it
 * signals at every value above the limit.
 *
 * <p>NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.3, doi:10.18434/M32189; Page, Biometrika
 * 1954;41:100, doi:10.1093/biomet/41.1-2.100.
 *
 * @param target value the process should have
 * @param allowance k, half the shift to be found, 0 or more, in the units of x
 * @param limit h, above 0, in the units of x
 */
public record TabularCusum(double target, double allowance, double limit) {

    /**
     * Checks the design.
     *
     * @param target finite
     * @param allowance finite, 0 or more
     * @param limit finite, above 0
     * @throws IllegalArgumentException when a component is out of its range
     */
    public TabularCusum {
        Require.finite("The target", target);
        Require.that(allowance >= 0 && Double.isFinite(allowance), "k must be 0 or more, but is %s.", allowance);
        Require.positive("The limit h", limit);
    }

    /**
     * One value on the chart.
     *
     * @param high sum against a rise, 0 or more
     * @param low sum against a fall, 0 or more
     * @param sum plain sum of differences from the target
     * @param signal whether either side is above the limit
     */
    public record Point(double high, double low, double sum, boolean signal) {}

    /**
     * The chart over a series.
     *
     * @param x at least one value, in their order
     * @return one point a value
     * @throws IllegalArgumentException when there is none or one is no number
     */
    public List<Point> path(double... x) {
        Require.finite("The series", x, 1);
        List<Point> points = new ArrayList<>(x.length);
        double high = 0;
        double low = 0;
        double sum = 0;
        for (double value : x) {
            high = Math.max(0, high + value - target - allowance);
            low = Math.max(0, low + target - allowance - value);
            sum += value - target;
            points.add(new Point(high, low, sum, high > limit || low > limit));
        }
        return List.copyOf(points);
    }

    /**
     * {@return the number of the first value that signals, counted from 1; empty without a signal}
     *
     * @param points of a chart, in their order
     */
    public static OptionalInt firstSignal(List<Point> points) {
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).signal()) {
                return OptionalInt.of(i + 1);
            }
        }
        return OptionalInt.empty();
    }
}
