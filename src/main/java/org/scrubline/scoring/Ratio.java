package org.scrubline.scoring;

import java.util.OptionalDouble;

/** A quotient that says so when it does not exist. */
public final class Ratio {
    private Ratio() {}

    /**
     * {@return {@code numerator / denominator}; empty when the denominator is 0, or the quotient infinite or NaN}
     *
     * @param numerator any number
     * @param denominator any number
     */
    public static OptionalDouble of(double numerator, double denominator) {
        return denominator == 0 ? OptionalDouble.empty() : finite(numerator / denominator);
    }

    /**
     * {@return the value itself; empty when it is infinite or NaN}
     *
     * @param value any number
     */
    public static OptionalDouble finite(double value) {
        return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    }
}
