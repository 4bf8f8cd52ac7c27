package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;

/**
 * One line of a decision study: what the mean of the planned observations would be worth. All are variances, in squared
 * units of the scores; a universe score estimated below 0 makes the coefficients negative or meaningless.
 *
 * @param universeScore variance of the persons' own level
 * @param relativeError error variance when persons are compared with each other
 * @param absoluteError error variance when each is compared with a standard; its root is the standard error of the mean
 */
public record Projection(double universeScore, double relativeError, double absoluteError) {

    /**
     * {@return the generalizability coefficient for comparisons, universe score over itself plus relative error; empty
     * without variance}
     */
    public OptionalDouble generalizability() {
        return Ratio.of(universeScore, universeScore + relativeError);
    }

    /**
     * {@return the index of dependability, phi, for decisions against a standard, universe score over itself plus
     * absolute error; empty without variance}
     */
    public OptionalDouble dependability() {
        return Ratio.of(universeScore, universeScore + absoluteError);
    }
}
