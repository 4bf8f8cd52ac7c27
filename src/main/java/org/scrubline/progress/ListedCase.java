package org.scrubline.progress;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.FocusSteps.Focus;
import org.scrubline.casework.PlannedCase;
import org.scrubline.rubric.Step;

/**
 * A planned case on somebody's list.
 *
 * @param planned the case and its trainee
 * @param evidence what the signed sheets say; empty while the case is more than a day ahead for a supervisor
 */
public record ListedCase(PlannedCase planned, Optional<Evidence> evidence) {

    /**
     * Counts and dates of one trainee and one procedure; no scorer's name, no text.
     *
     * @param operated cases operated so far, declared ones included
     * @param signed cases with a signed sheet that counts
     * @param scorers how many supervisors signed them
     * @param lastAt end of the last case operated; null for none
     * @param sinceLast time since then; null for none
     * @param gap whether that is longer than the programme lets pass unmentioned
     * @param focus weak steps with enough scores, weakest first
     * @param few critical steps scored too seldom to say anything, in the order of the operation
     */
    public record Evidence(
            int operated,
            int signed,
            int scorers,
            @Nullable Instant lastAt,
            @Nullable Duration sinceLast,
            boolean gap,
            List<Focus> focus,
            List<Step> few) {

        public Evidence {
            focus = List.copyOf(focus);
            few = List.copyOf(few);
        }
    }
}
