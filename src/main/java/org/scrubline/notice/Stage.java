package org.scrubline.notice;

import java.time.Duration;
import java.util.Optional;
import org.scrubline.people.ProgrammeSettings;

/** How long a score has been missing, in the steps at which its supervisor is reminded once each. */
public enum Stage {
    /** A day after the end of the case. */
    NUDGE,
    /** From here on a signature is a late entry. */
    LATE,
    /** Soon a signature needs a director's release, or needs it already. */
    CLOSING;

    static final Duration NUDGE_AFTER = Duration.ofHours(24);
    /** Before the sheet closes, so that there is still time to sign. */
    static final Duration CLOSING_BEFORE = Duration.ofDays(2);

    /**
     * The stage reached; empty while none is.
     *
     * @param age time since the end of the case
     */
    static Optional<Stage> at(Duration age, ProgrammeSettings settings) {
        if (reached(age, settings.closedAfter().minus(CLOSING_BEFORE))) {
            return Optional.of(CLOSING);
        }
        if (reached(age, settings.lateAfter())) {
            return Optional.of(LATE);
        }
        return reached(age, NUDGE_AFTER) ? Optional.of(NUDGE) : Optional.empty();
    }

    private static boolean reached(Duration age, Duration limit) {
        return age.compareTo(limit) >= 0;
    }
}
