package org.scrubline.scoring.estimate;

/**
 * Two limits of an interval.
 *
 * @param low the lower limit; may be negative infinity
 * @param high the upper limit, not below {@code low}; may be infinity
 */
public record Interval(double low, double high) {

    /**
     * Checks the order of the limits.
     *
     * @param low not NaN
     * @param high {@code low} or more
     * @throws IllegalArgumentException when {@code high} is below {@code low} or one of them is NaN
     */
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("An interval cannot run from " + low + " to " + high + ".");
        }
    }

    /**
     * {@return whether {@code value} lies in the interval, the limits included; false for NaN}
     *
     * @param value any number
     */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    /** {@return the distance of the limits, 0 or more; infinite when one limit is} */
    public double width() {
        return high - low;
    }
}
