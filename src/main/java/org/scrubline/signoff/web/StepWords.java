package org.scrubline.signoff.web;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.StepState.BySupervisor.Cause;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.SheetContent.StepLine;
import org.scrubline.signoff.web.RecordPage.StepView;
import org.springframework.stereotype.Component;

/** Puts one step into words. */
@Component
class StepWords {

    private final RecordWords words;

    StepWords(RecordWords words) {
        this.words = words;
    }

    StepView of(Step step, StepLine line, Map<String, String> measured, @Nullable Integer self) {
        List<String> measures = step.measures().stream()
                .filter(measure -> measured.containsKey(measure.code()))
                .map(measure -> measure(measure, measured.getOrDefault(measure.code(), "")))
                .toList();
        return new StepView(step.code(), step.name(), line.critical(), line.level(), said(step, line), measures, self);
    }

    private String said(Step step, StepLine line) {
        if (line.level() != null) {
            return step.sentence(line.level());
        }
        String key = line.cause() == Cause.AFTER_TAKEOVER ? "AFTER_TAKEOVER" : line.state();
        return words.say("signoff.state." + key);
    }

    private String measure(Measure measure, String value) {
        if (measure.kind() == MeasureKind.YES_NO) {
            return words.say(value.equals("1") ? "signoff.measure.yes" : "signoff.measure.no", measure.name());
        }
        return words.say("signoff.measure", measure.name(), value, measure.unit())
                .strip();
    }
}
