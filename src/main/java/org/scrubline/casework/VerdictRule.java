package org.scrubline.casework;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/**
 * The order of the verdict: not yet safe (a critical step at 1 or 2, or a blocking event); independent (critical steps
 * all 4 or 5 or not part, no step at 1, at most two other steps at 3); safe with supervisor scrubbed (critical steps
 * all 3 or more or not part); otherwise no verdict, naming the critical steps that were not scored.
 */
class VerdictRule {

    private static final int OTHER_STEPS_AT_3 = 2;

    private final Rubric rubric;
    private final EventCatalogue catalogue;
    private final Sheet sheet;

    VerdictRule(Rubric rubric, EventCatalogue catalogue, Sheet sheet) {
        this.rubric = rubric;
        this.catalogue = catalogue;
        this.sheet = sheet;
    }

    CaseVerdict evaluate() {
        List<Refusal> unsafe = unsafe();
        if (!unsafe.isEmpty()) {
            return new CaseVerdict(Verdict.NOT_YET_SAFE, unsafe);
        }
        List<Step> unsettled =
                critical(state -> !(state instanceof StepState.NotPart) && !scored(state, level -> true));
        if (!unsettled.isEmpty()) {
            return new CaseVerdict(
                    Verdict.NO_VERDICT,
                    List.of(Refusal.at(
                            field(unsettled.get(0)), "verdict.reason.open", unsettled.size(), names(unsettled))));
        }
        List<Refusal> dependent = dependent();
        return dependent.isEmpty()
                ? new CaseVerdict(Verdict.INDEPENDENT, List.of(Refusal.of("verdict.reason.independent")))
                : new CaseVerdict(Verdict.SAFE_WITH_SUPERVISOR_SCRUBBED, dependent);
    }

    private List<Refusal> unsafe() {
        List<Refusal> reasons = new ArrayList<>();
        critical(state -> scored(state, level -> level <= 2))
                .forEach(step -> reasons.add(Refusal.at(field(step), "verdict.reason.low", step.name(), level(step))));
        sheet.events().stream()
                .filter(event -> catalogue.blocks(event.eventCode(), event.reason()))
                .forEach(event -> reasons.add(Refusal.of(
                        "verdict.reason.event",
                        catalogue.kind(event.eventCode()).name())));
        return reasons;
    }

    /** Why the case, safe as it is, is not independent. */
    private List<Refusal> dependent() {
        List<Refusal> reasons = new ArrayList<>();
        critical(state -> scored(state, level -> level == 3))
                .forEach(step -> reasons.add(Refusal.at(field(step), "verdict.reason.three", step.name())));
        steps(step -> scored(sheet.step(step.code()), level -> level == 1))
                .forEach(step -> reasons.add(Refusal.at(field(step), "verdict.reason.one", step.name())));
        List<Step> threes = steps(step -> !step.critical() && scored(sheet.step(step.code()), level -> level == 3));
        if (threes.size() > OTHER_STEPS_AT_3) {
            reasons.add(Refusal.at(field(threes.get(0)), "verdict.reason.threes", threes.size(), names(threes)));
        }
        return reasons;
    }

    private List<Step> critical(Predicate<StepState> state) {
        return steps(step -> step.critical() && state.test(sheet.step(step.code())));
    }

    private List<Step> steps(Predicate<Step> which) {
        return rubric.steps().stream().filter(which).toList();
    }

    private static boolean scored(StepState state, IntPredicate level) {
        return state instanceof StepState.Scored step && level.test(step.level());
    }

    private int level(Step step) {
        return sheet.step(step.code()) instanceof StepState.Scored scored ? scored.level() : 0;
    }

    /** The field of the sheet a reason leads to. */
    private static String field(Step step) {
        return "step." + step.code();
    }

    private static String names(List<Step> steps) {
        return String.join(", ", steps.stream().map(Step::name).toList());
    }
}
