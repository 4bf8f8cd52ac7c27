package org.scrubline.progress.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The signed sheets behind one step of one trainee.
 *
 * @param back the page of the procedure
 * @param sees what the observer looks for
 * @param counts the states apart
 */
record StepPage(
        String traineeName,
        String back,
        String procedure,
        String name,
        String sees,
        List<ProgressPage.Fact> counts,
        List<Line> lines) {

    /**
     * One sheet.
     *
     * @param level 1 to 5; null when the step was not scored
     * @param state message key of the state; null when it was scored
     */
    record Line(
            String href,
            String ended,
            String scorer,
            String band,
            @Nullable Integer level,
            @Nullable String state,
            boolean late,
            boolean contested,
            boolean awaiting) {}
}
