package org.scrubline.scoring.control;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.scoring.Require;

/**
 * The exponentially weighted moving average of a measurement: z = lambda x + (1 - lambda) z, started at the target,
 * with the steady-state limits target ± L sigma sqrt(lambda / (2 - lambda)). Early averages vary less than these limits
 * allow for. With lambda = 1 it is the plain chart of single values. Signals are left to the reader.
 *
 * <p>NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4, doi:10.18434/M32189; Roberts, Technometrics
 * 1959;1:239, doi:10.1080/00401706.1959.10489860.
 *
 * @param lambda weight of the newest value, above 0, at most 1
 * @param target value the process should have
 * @param sigma standard deviation of one value, above 0
 * @param width L, limits in standard errors, above 0
 */
public record EwmaChart(double lambda, double target, double sigma, double width) {

    /**
     * Checks the design.
     *
     * @param lambda above 0, at most 1
     * @param target finite
     * @param sigma finite, above 0
     * @param width finite, above 0
     * @throws IllegalArgumentException when a component is out of its range
     */
    public EwmaChart {
        Require.that(lambda > 0 && lambda <= 1, "lambda must lie above 0 and not above 1, but is %s.", lambda);
        Require.finite("The target", target);
        Require.positive("sigma", sigma);
        Require.positive("L", width);
    }

    /**
     * The average after each value.
     *
     * @param x the series, at least one value, in the units of the target
     * @return one average a value, between the target and the values seen
     * @throws IllegalArgumentException when there is none or one is no number
     */
    public List<Double> path(double... x) {
        Require.finite("The series", x, 1);
        List<Double> path = new ArrayList<>(x.length);
        double average = target;
        for (double value : x) {
            average += lambda * (value - average);
            path.add(average);
        }
        return List.copyOf(path);
    }

    /** {@return the upper limit in the steady state} */
    public double upperLimit() {
        return target + distance();
    }

    /** {@return the lower limit in the steady state} */
    public double lowerLimit() {
        return target - distance();
    }

    private double distance() {
        return width * sigma * Math.sqrt(lambda / (2 - lambda));
    }
}
