package org.scrubline.scoring.curve;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.Map;

/**
 * Why the raw share of a step and its modelled chance at the newest case differ. The occasions on which the step was
 * scored are carried over to the typical case one component of the model after the other, in the order of {@link Part};
 * each part is the change of the mean chance at its turn, so they add up to the difference exactly. Another order would
 * shift a little between them.
 *
 * @param step step code
 * @param scores how often it was scored; 1 or more
 * @param raw share of these scores at the curve's level or better, 0..1
 * @param modelled last point of its {@link StepCurve}, 0..1
 * @param parts one for each {@link Part}, −1..1; together {@code modelled - raw}
 */
public record StepGap(String step, int scores, double raw, double modelled, Map<Part, Double> parts) {

    /** What the model takes into account and a raw share does not. */
    public enum Part {
        /** Scores alone against what the model expects of the same occasions: few are drawn to what is usual. */
        PULL,
        /** Complexity of the cases against the programme's mix. */
        CASES,
        /** Severity and range of the supervisors who scored, and how they see this trainee, against their mean. */
        SCORERS,
        /** How these occasions went as a whole, level and day together, against an ordinary day at the newest level. */
        TREND
    }

    /**
     * Checks and copies the parts.
     *
     * @param step not checked
     * @param scores 1 or more
     * @param raw not checked
     * @param modelled not checked
     * @param parts one for each {@link Part}; copied
     * @throws IllegalArgumentException when there is no score or a part is missing
     */
    public StepGap {
        parts = Map.copyOf(parts);
        if (scores < 1 || parts.size() != Part.values().length) {
            throw new IllegalArgumentException("step " + step + " needs a score and every part");
        }
    }

    /** {@return modelled less raw, −1..1} */
    public double size() {
        return modelled - raw;
    }

    /**
     * {@return the part that does most in the direction of the difference; the first of {@link Part} among equals.
     * Without a difference there is no direction and the answer says nothing}
     */
    public Part largest() {
        double direction = Math.signum(size());
        return new EnumMap<>(parts)
                .entrySet().stream()
                        .max(Comparator.comparingDouble((Map.Entry<Part, Double> part) -> direction * part.getValue())
                                .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                        .orElseThrow()
                        .getKey();
    }
}
