package org.scrubline.progress.web;

import java.util.List;
import org.scrubline.platform.Wording;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.scoring.curve.StepCurve;

/** A step of the newest rubric that was scored at least once, with what was counted and what the model says. */
record ModelledStep(StepProgress counted, StepCurve curve) {

    /** In the order of the operation. */
    static List<ModelledStep> of(TraineeCurve curve, ProcedureProgress progress) {
        return progress.steps().stream()
                .filter(StepProgress::current)
                .flatMap(counted -> curve.model().steps().stream()
                        .filter(modelled ->
                                modelled.step().equals(counted.step().code()))
                        .filter(modelled -> modelled.seen() > 0)
                        .map(modelled -> new ModelledStep(counted, modelled)))
                .toList();
    }

    /** As things stood at the newest case. */
    StepCurve.Chance now() {
        return curve.points().get(curve.points().size() - 1);
    }

    /** Code and name; a critical step says so. */
    String name(Wording wording) {
        String name = wording.text(
                "progress.step.name", counted.step().code(), counted.step().name());
        return counted.step().critical() ? wording.text("progress.step.critical", name) : name;
    }
}
