package org.scrubline.progress.web;

import org.scrubline.platform.Wording;
import org.scrubline.progress.TraineeCurve;
import org.scrubline.scoring.curve.StepGap;
import org.springframework.stereotype.Component;

/** Says why a raw share and its modelled chance are far apart: the component of the model that does most. */
@Component
class GapWords {

    private final Wording wording;

    GapWords(Wording wording) {
        this.wording = wording;
    }

    /** One sentence when they are more than 15 points apart, otherwise a dash. */
    String reason(TraineeCurve curve, ModelledStep step) {
        return curve.wideGaps().stream()
                .filter(gap -> gap.step().equals(step.curve().step()))
                .map(this::reason)
                .findFirst()
                .orElse("–");
    }

    private String reason(StepGap gap) {
        String direction = gap.size() > 0 ? "higher" : "lower";
        return wording.text("progress.curve.gap." + gap.largest() + "." + direction, gap.scores());
    }
}
