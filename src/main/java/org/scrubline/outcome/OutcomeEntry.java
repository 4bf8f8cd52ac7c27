package org.scrubline.outcome;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One entry about the outcome of a case. It never changes; another one puts it right.
 *
 * @param ordinal place among the entries of the case, from 1
 * @param replaces the ordinal of the entry it puts right, or null
 */
public record OutcomeEntry(
        UUID id,
        UUID caseId,
        int ordinal,
        @Nullable Integer replaces,
        Content content,
        Source source,
        UUID enteredBy,
        Instant enteredAt) {

    /** Where it comes from. */
    public enum Source {
        CLINIC_LETTER,
        SEEN_MYSELF,
        FROM_ELSEWHERE
    }

    /** What is entered. */
    public sealed interface Content permits Baseline, Visit, NoVisit, Mistake {}

    /**
     * The eye before the operation.
     *
     * @param acuityLines lines read on the chart, 0 to {@link #MOST_LINES}, or null
     */
    public record Baseline(
            LocalDate day, Pressure pressure, @Nullable Integer acuityLines) implements Content {

        public static final int MOST_LINES = 20;
    }

    /**
     * No visit to tell of in a window.
     *
     * @param since the day from which that is known
     * @param why for {@link Absence#LOST}, otherwise null
     */
    public record NoVisit(
            FollowUp window,
            Absence absence,
            LocalDate since,
            @Nullable LostReason why) implements Content {

        public NoVisit {
            if ((absence == Absence.LOST) != (why != null)) {
                throw new IllegalArgumentException("lost to follow-up has a reason, and nothing else has one");
            }
        }
    }

    /** What it replaces was entered by mistake; nothing stands in its place. */
    public record Mistake() implements Content {}

    /** Why there is no visit. */
    public enum Absence {
        MISSED,
        /** Seen, but not here, and nothing is known of it. */
        ELSEWHERE,
        /** Lost to follow-up: no later visit is expected either. */
        LOST
    }

    /** Why no later visit is expected, as a code: a sentence could point to a patient. */
    public enum LostReason {
        MOVED,
        NOT_REACHED,
        DECLINED,
        CARE_ELSEWHERE,
        ILL,
        DIED
    }
}
