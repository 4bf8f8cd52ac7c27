package org.scrubline.casework;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.TakeoverReason;

/** One thing a supervisor does on a sheet. */
public sealed interface SheetChange {

    /** Confirms the trainee's part and says where the supervisor was: one tap when both are as logged. */
    record ConfirmRole(Part part, Supervision supervision) implements SheetChange {}

    /** Says what happened on one step; blank takes it back. */
    record SetStep(String stepCode, StepState state) implements SheetChange {}

    /** Says the same of every blank step of a phase: by supervisor, not part or not seen, never a level. */
    record SetBlankSteps(@Nullable Phase phase, StepState state) implements SheetChange {}

    /** Writes down a measure; null takes it back. */
    record SetMeasure(String measureCode, @Nullable BigDecimal value) implements SheetChange {}

    /** Records an event. A takeover sets its step to level 1 and the blank rest of its phase to by supervisor. */
    record AddEvent(
            UUID eventId,
            String eventCode,
            @Nullable String stepCode,
            @Nullable TakeoverReason reason,
            String actionTaken)
            implements SheetChange {
        /** Under an id nobody has to know beforehand. */
        public AddEvent(
                String eventCode, @Nullable String stepCode, @Nullable TakeoverReason reason, String actionTaken) {
            this(UUID.randomUUID(), eventCode, stepCode, reason, actionTaken);
        }
    }

    /** Takes an event back. */
    record RemoveEvent(UUID eventId) implements SheetChange {}

    /** One strength and one next step. */
    record SetFeedback(String strength, String nextStep) implements SheetChange {}

    /** Several changes as one, from a page that saves as a whole. */
    record All(List<SheetChange> changes) implements SheetChange {
        public All {
            changes = List.copyOf(changes);
        }
    }
}
