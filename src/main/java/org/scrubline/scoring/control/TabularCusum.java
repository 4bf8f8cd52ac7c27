package org.scrubline.scoring.control;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.scrubline.scoring.Require;

/**
 * The two-sided tabular CUSUM of a measurement: high = max(0, high + x - target - k), low = max(0, low + target - k - x),
 * start 0, signal when either is above the limit (strictly; this chart is not discrete, no reset).
 *
 * <p>NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.3, doi:10.18434/M32189; Page, Biometrika 1954;41:100,
 * doi:10.1093/biomet/41.1-2.100.
 *
 * @param target value the process should have
 * @param allowance k, half the shift to be found, 0 or more
 * @param limit h, above 0, in the units of x
 */
public record TabularCusum(double target, double allowance, double limit) {

    /** Checks the design. */
    public TabularCusum {
        Require.finite("The target", target);
        Require.that(allowance >= 0 && Double.isFinite(allowance), "k must be 0 or more, but is %s.", allowance);
        Require.positive("The limit h", limit);
    }

    /**
     * One value on the chart.
     *
     * @param high sum against a rise
     * @param low sum against a fall
     * @param sum plain sum of differences from the target
     * @param signal whether either side is above the limit
     */
    public record Point(double high, double low, double sum, boolean signal) {}

    /** The chart over a series of at least one value. */
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

    /** Number of the first value that signals, counted from 1; empty without a signal. */
    public static OptionalInt firstSignal(List<Point> points) {
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).signal()) {
                return OptionalInt.of(i + 1);
            }
        }
        return OptionalInt.empty();
    }
}
