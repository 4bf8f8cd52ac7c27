package org.scrubline.scoring.reliability;

import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;

/**
 * One line of a decision study: what the mean of the planned observations would be worth.
 *
 * @param universeScore variance of the persons' own level
 * @param relativeError error variance when persons are compared with each other
 * @param absoluteError error variance when each is compared with a standard; its root is the standard error of the mean
 */
public record Projection(double universeScore, double relativeError, double absoluteError) {

    /** Generalizability coefficient for comparisons; empty without variance. */
    public OptionalDouble generalizability() {
        return Ratio.of(universeScore, universeScore + relativeError);
    }

    /** Index of dependability, phi, for decisions against a standard; empty without variance. */
    public OptionalDouble dependability() {
        return Ratio.of(universeScore, universeScore + absoluteError);
    }
}
