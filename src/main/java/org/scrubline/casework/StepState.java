package org.scrubline.casework;

import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What the supervisor said about one step. The five are never mixed: a blank is not "not seen", and a step done by the
 * supervisor is no low level.
 */
public sealed interface StepState {

    /** Observed and scored, 1 to 5. */
    record Scored(int level) implements StepState {
        public Scored {
            if (level < 1 || level > 5) {
                throw new IllegalArgumentException("a level is 1 to 5, not " + level);
            }
        }
    }

    /** Done by the supervisor, as planned or as the untouched rest of a phase after a takeover. */
    record BySupervisor(Cause cause) implements StepState {
        /** Why the supervisor did it. */
        public enum Cause {
            PLAN,
            AFTER_TAKEOVER
        }
    }

    /** The step does not belong to this case. */
    record NotPart() implements StepState {}

    /** The step happened and the scorer did not see it. */
    record NotSeen() implements StepState {}

    /** Nothing said yet. Signing is refused while one remains. */
    record Blank() implements StepState {}

    /** Nothing said yet. */
    static StepState blank() {
        return new Blank();
    }

    /** One result per kind of state. */
    default <R> R fold(
            Function<Integer, R> scored,
            Function<BySupervisor.Cause, R> bySupervisor,
            Supplier<R> notPart,
            Supplier<R> notSeen,
            Supplier<R> blank) {
        if (this instanceof Scored step) {
            return scored.apply(step.level());
        }
        if (this instanceof BySupervisor step) {
            return bySupervisor.apply(step.cause());
        }
        if (this instanceof NotPart) {
            return notPart.get();
        }
        return this instanceof NotSeen ? notSeen.get() : blank.get();
    }
}
