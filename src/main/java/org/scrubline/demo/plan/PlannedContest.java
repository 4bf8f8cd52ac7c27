package org.scrubline.demo.plan;

import java.util.List;

/**
 * A trainee's contest of a signed sheet.
 *
 * @param steps codes of the contested steps
 * @param reviewer id of the supervisor who reviews
 */
public record PlannedContest(Outcome outcome, List<String> steps, String reviewer) {

    /** How it ends. */
    public enum Outcome {
        UPHELD,
        NOT_UPHELD,
        OPEN
    }

    public PlannedContest {
        steps = List.copyOf(steps);
    }
}
