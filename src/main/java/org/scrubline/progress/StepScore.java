package org.scrubline.progress;

import java.util.OptionalInt;
import org.scrubline.casework.StepState;
import org.scrubline.signoff.SignedSheet;

/** What one signed sheet says about one step. */
public record StepScore(SignedSheet sheet, StepState state) {

    /** From this level on the step needed no help. */
    public static final int HIGH = 4;

    /** The level 1 to 5; empty when the step was not scored. */
    public OptionalInt level() {
        return state instanceof StepState.Scored scored ? OptionalInt.of(scored.level()) : OptionalInt.empty();
    }

    /** Scored, at level 1 to 3. */
    public boolean low() {
        return level().isPresent() && level().getAsInt() < HIGH;
    }
}
