package org.scrubline.casework.web;

import java.util.List;
import org.scrubline.casework.CaseVerdict;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Verdict;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** Makes the foot of the sheet: the running verdict with its reasons in words. */
@Component
class Foot {

    private final SheetWords words;

    Foot(SheetWords words) {
        this.words = words;
    }

    SheetPage.Foot of(Draft draft) {
        Rubric rubric = draft.rubric();
        Sheet sheet = draft.sheet();
        CaseVerdict verdict = CaseVerdict.of(rubric, draft.catalogue(), sheet);
        int done = (int)
                rubric.steps().stream().filter(step -> !blank(sheet, step)).count();
        long open = rubric.criticalSteps().stream()
                .filter(step -> blank(sheet, step))
                .count();
        boolean stillOpen = verdict.verdict() == Verdict.NO_VERDICT && open > 0;
        String phrase = stillOpen
                ? words.say("sheet.running.open", open)
                : words.say("sheet.running", words.say(verdict.verdict().messageKey()));
        List<SheetPage.Reason> reasons =
                verdict.reasons().stream().map(this::reason).toList();
        return new SheetPage.Foot(done, rubric.steps().size(), phrase, reasons);
    }

    private SheetPage.Reason reason(Refusal reason) {
        String href =
                reason.field().isEmpty() ? "#events" : "#" + reason.field().replace('.', '-');
        return new SheetPage.Reason(words.say(reason), href);
    }

    private static boolean blank(Sheet sheet, Step step) {
        return sheet.step(step.code()) instanceof StepState.Blank;
    }
}
