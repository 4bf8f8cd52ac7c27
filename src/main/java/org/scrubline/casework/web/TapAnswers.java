package org.scrubline.casework.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** Says how a sheet stands after a tap. */
@Component
class TapAnswers {

    private final SheetPages pages;
    private final StepViews steps;
    private final Foot foot;
    private final SheetWords words;

    TapAnswers(SheetPages pages, StepViews steps, Foot foot, SheetWords words) {
        this.pages = pages;
        this.steps = steps;
        this.foot = foot;
        this.words = words;
    }

    TapAnswer of(UUID tap, Draft draft, SheetReading reading) {
        SheetPage.Foot bar = foot.of(draft);
        Map<String, String> answers = new LinkedHashMap<>();
        Map<String, String> causes = new LinkedHashMap<>();
        for (Step step : draft.rubric().steps()) {
            answers.put(step.code(), SheetInput.answer(draft.sheet().step(step.code())));
            String cause = steps.cause(draft.sheet().step(step.code()));
            if (cause != null) {
                causes.put(step.code(), cause);
            }
        }
        SheetInput stored = draft.stored();
        Suggestions suggestions = new Suggestions(draft.rubric(), draft.sheet());
        return new TapAnswer(
                TapAnswer.MARK,
                tap,
                draft.sheet().lockVersion(),
                bar.done(),
                bar.total(),
                words.say("components.verdict.progress", bar.done(), bar.total()),
                bar.verdict(),
                bar.reasons(),
                answers,
                causes,
                stored.text("part"),
                stored.text("supervision"),
                pages.roleSaid(draft),
                steps.pieces(draft),
                pages.recorded(draft),
                suggestions.strengths(),
                suggestions.nextSteps(),
                words.identityWarnings(reading.texts()),
                SheetImage.of(draft.sheet()));
    }
}
