package org.scrubline.casework.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.PieceCount;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.BySupervisor;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;
import org.scrubline.rubric.PhaseSteps;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** Makes the phases and steps of the page. */
@Component
class StepViews {

    private static final List<String> REST = List.of("BY_SUPERVISOR", "NOT_PART", "NOT_SEEN");

    private final SheetWords words;

    StepViews(SheetWords words) {
        this.words = words;
    }

    List<SheetPage.Phase> of(Draft draft, SheetInput shown, Map<String, String> errors) {
        List<SheetPage.Phase> phases = new ArrayList<>();
        boolean found = false;
        for (PhaseSteps phase : draft.rubric().phases()) {
            int done = (int) phase.steps().stream()
                    .filter(step -> shown.says("step." + step.code()))
                    .count();
            boolean wrong = phase.steps().stream().anyMatch(step -> wrong(step, errors));
            boolean current = !found && done < phase.steps().size();
            found = found || current;
            phases.add(phase(draft, phase, shown, errors, done, wrong || current));
        }
        return phases;
    }

    private SheetPage.Phase phase(
            Draft draft, PhaseSteps phase, SheetInput shown, Map<String, String> errors, int done, boolean open) {
        boolean converted = draft.surgicalCase().convertedTo() != null;
        String code = phase.phase().name();
        return new SheetPage.Phase(
                code,
                words.say("rubric.phase." + code),
                done,
                phase.steps().size(),
                open,
                steps(draft.sheet(), phase, shown, errors, step -> converted || !step.onlyWhenConverted()),
                steps(draft.sheet(), phase, shown, errors, step -> !converted && step.onlyWhenConverted()),
                REST.stream()
                        .map(state -> new SheetPage.Option(code + ":" + state, words.say("sheet.rest." + state), null))
                        .toList(),
                countsOut(draft, phase) ? pieces(draft) : null);
    }

    private List<SheetPage.Step> steps(
            Sheet sheet, PhaseSteps phase, SheetInput shown, Map<String, String> errors, Predicate<Step> which) {
        return phase.steps().stream()
                .filter(which)
                .map(step -> step(sheet, step, shown, errors))
                .toList();
    }

    private SheetPage.Step step(Sheet sheet, Step step, SheetInput shown, Map<String, String> errors) {
        String field = "step." + step.code();
        List<SheetPage.Level> levels = new ArrayList<>();
        for (int level = 1; level <= Step.LEVELS; level++) {
            levels.add(new SheetPage.Level(level, step.sentence(level)));
        }
        return new SheetPage.Step(
                step.code(),
                step.name(),
                step.critical(),
                step.sees(),
                levels,
                shown.says(field) ? shown.text(field) : null,
                cause(sheet.step(step.code())),
                step.measures().stream()
                        .map(measure -> measure(step, measure, shown, errors))
                        .toList(),
                errors.get(field),
                false);
    }

    /** Why the supervisor did the step, where it was no plan. */
    @Nullable
    String cause(StepState state) {
        return state instanceof BySupervisor by && by.cause() == BySupervisor.Cause.AFTER_TAKEOVER
                ? words.say("sheet.cause.AFTER_TAKEOVER")
                : null;
    }

    private static SheetPage.Measure measure(Step step, Measure measure, SheetInput shown, Map<String, String> errors) {
        String field = "measure." + step.code() + "." + measure.code();
        boolean yesNo = measure.kind() == MeasureKind.YES_NO;
        BigDecimal by = Objects.requireNonNullElse(measure.stepSize(), BigDecimal.ONE);
        return new SheetPage.Measure(
                measure.code(),
                measure.name(),
                measure.unit().isEmpty() ? null : measure.unit(),
                yesNo ? null : measure.accepted(),
                shown.says(field) ? shown.text(field) : null,
                BigDecimal.ZERO,
                measure.kind() == MeasureKind.COUNT ? BigDecimal.valueOf(99) : BigDecimal.valueOf(9999),
                by,
                yesNo,
                errors.get(field));
    }

    /** Said when the pieces counted out are not the pieces counted in; empty otherwise. */
    String pieces(Draft draft) {
        return PieceCount.of(draft.rubric(), draft.sheet())
                .filter(PieceCount::differs)
                .map(count -> words.say("sheet.pieces", count.in(), count.out()))
                .orElse("");
    }

    /** Whether the pieces are counted out in this phase: that is where a difference is said. */
    private static boolean countsOut(Draft draft, PhaseSteps phase) {
        return PieceCount.of(draft.rubric(), draft.sheet())
                .filter(count -> phase.steps().contains(count.outStep()))
                .isPresent();
    }

    private static boolean wrong(Step step, Map<String, String> errors) {
        return errors.keySet().stream()
                .anyMatch(field ->
                        field.equals("step." + step.code()) || field.startsWith("measure." + step.code() + "."));
    }
}
