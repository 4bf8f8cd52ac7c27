package org.scrubline.progress.web;

import org.scrubline.progress.StepProgress;

/** Shares as whole percent, rounded half up. */
final class Percent {

    private Percent() {}

    static int of(StepProgress step) {
        return round((double) step.high() / step.scored());
    }

    static int low(StepProgress step) {
        return round(step.interval().low());
    }

    static int high(StepProgress step) {
        return round(step.interval().high());
    }

    private static int round(double share) {
        return (int) Math.round(100 * share);
    }
}
