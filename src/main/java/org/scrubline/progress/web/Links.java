package org.scrubline.progress.web;

import java.util.UUID;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.StepProgress;

/** Addresses of this room's pages. */
final class Links {

    private Links() {}

    static String trainee(UUID trainee) {
        return "/progress/" + trainee;
    }

    static String step(UUID trainee, ProcedureProgress progress, StepProgress step) {
        return trainee(trainee) + "/steps/" + step.step().code() + "?procedure="
                + progress.rubric().procedure();
    }
}
