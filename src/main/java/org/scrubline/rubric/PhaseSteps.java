package org.scrubline.rubric;

import java.util.List;

/** A phase of a rubric with its steps in order. */
public record PhaseSteps(Phase phase, List<Step> steps) {

    public PhaseSteps {
        steps = List.copyOf(steps);
    }
}
