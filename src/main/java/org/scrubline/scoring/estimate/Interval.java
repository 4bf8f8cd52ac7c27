package org.scrubline.scoring.estimate;

/**
 * Two limits of an interval.
 *
 * @param low the lower limit
 * @param high the upper limit, not below {@code low}
 */
public record Interval(double low, double high) {

    /** Refuses limits in the wrong order and limits that are no numbers. */
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("An interval cannot run from " + low + " to " + high + ".");
        }
    }

    /** Whether {@code value} lies in the interval, the limits included. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    /** The distance of the limits. */
    public double width() {
        return high - low;
    }
}
