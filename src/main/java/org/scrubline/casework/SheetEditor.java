package org.scrubline.casework;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.StepState.BySupervisor;
import org.scrubline.casework.StepState.BySupervisor.Cause;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/**
 * Makes the next version of a sheet from one version and one change, in memory. A change refused anywhere is refused
 * as a whole, with every reason.
 */
class SheetEditor {

    static final int FEEDBACK_LENGTH = 1000;

    private final Rubric rubric;
    private final EventCheck eventCheck;
    private final Sheet sheet;
    private final Instant at;
    private final Map<String, StepState> steps;
    private final Set<String> inBulk;
    private final Map<String, BigDecimal> measures;
    private final List<RecordedEvent> events;
    private final List<Refusal> refusals = new ArrayList<>();
    private @Nullable Part part;
    private @Nullable Supervision supervision;
    private String strength;
    private String nextStep;

    private SheetEditor(Rubric rubric, EventCatalogue catalogue, Sheet sheet, Instant at) {
        this.rubric = rubric;
        this.eventCheck = new EventCheck(rubric, catalogue);
        this.sheet = sheet;
        this.at = at;
        this.steps = new LinkedHashMap<>(sheet.steps());
        this.inBulk = new HashSet<>(sheet.inBulk());
        this.measures = new LinkedHashMap<>(sheet.measures());
        this.events = new ArrayList<>(sheet.events());
        this.part = sheet.confirmedPart();
        this.supervision = sheet.givenSupervision();
        this.strength = sheet.strength();
        this.nextStep = sheet.nextStep();
    }

    /** The sheet after the change, still under the old lock version; or every reason why not. */
    static Attempt<Sheet> apply(Rubric rubric, EventCatalogue catalogue, Sheet sheet, SheetChange change, Instant at) {
        SheetEditor editor = new SheetEditor(rubric, catalogue, sheet, at);
        editor.apply(change);
        return editor.refusals.isEmpty() ? Attempt.done(editor.result()) : Attempt.refused(editor.refusals);
    }

    /** Name of the state in records and forms: SCORED, BY_SUPERVISOR, NOT_PART, NOT_SEEN or BLANK. */
    static String answer(StepState state) {
        return state.fold(
                level -> "SCORED", cause -> "BY_SUPERVISOR", () -> "NOT_PART", () -> "NOT_SEEN", () -> "BLANK");
    }

    /** One form for each number, so that 0.50 and 0.5 are the same value. */
    static BigDecimal plain(BigDecimal number) {
        return new BigDecimal(number.stripTrailingZeros().toPlainString());
    }

    private void apply(SheetChange change) {
        if (change instanceof SheetChange.All all) {
            all.changes().forEach(this::apply);
        } else if (change instanceof SheetChange.ConfirmRole role) {
            part = role.part();
            supervision = role.supervision();
        } else if (change instanceof SheetChange.SetStep step) {
            setStep(step.stepCode(), step.state());
        } else if (change instanceof SheetChange.SetBlankSteps blanks) {
            answerTogether(blanks.phase(), blanks.state());
        } else if (change instanceof SheetChange.SetMeasure measure) {
            setMeasure(measure.measureCode(), measure.value());
        } else if (change instanceof SheetChange.AddEvent event) {
            addEvent(event);
        } else if (change instanceof SheetChange.RemoveEvent event) {
            removeEvent(event.eventId());
        } else if (change instanceof SheetChange.SetFeedback feedback) {
            setFeedback(feedback);
        }
    }

    private void setStep(String code, StepState state) {
        Optional<Step> step = rubric.find(code);
        if (step.isEmpty()) {
            refusals.add(Refusal.of("sheet.refusal.step", code));
        } else if (takenOver(code) && !state.equals(new StepState.Scored(1))) {
            refusals.add(Refusal.at(
                    field(code), "sheet.refusal.taken-over", step.get().name()));
        } else if (state.equals(new BySupervisor(Cause.AFTER_TAKEOVER))
                && !takenOver(step.get().phase())) {
            refusals.add(Refusal.at(
                    field(code), "sheet.refusal.no-takeover", step.get().name()));
        } else {
            put(code, state);
        }
    }

    private void put(String code, StepState state) {
        if (!state.equals(steps.get(code))) {
            inBulk.remove(code);
        }
        if (state instanceof StepState.Blank) {
            steps.remove(code);
        } else {
            steps.put(code, state);
        }
    }

    private void answerTogether(@Nullable Phase phase, StepState state) {
        if (state instanceof StepState.Scored || state instanceof StepState.Blank) {
            refusals.add(Refusal.of("sheet.refusal.bulk-level"));
            return;
        }
        inBulk.addAll(setBlanks(phase, state));
    }

    /** Gives the codes of the steps that were blank. */
    private List<String> setBlanks(@Nullable Phase phase, StepState state) {
        List<String> blank = rubric.steps().stream()
                .filter(step -> phase == null || step.phase() == phase)
                .map(Step::code)
                .filter(code -> !steps.containsKey(code))
                .toList();
        blank.forEach(code -> steps.put(code, state));
        return blank;
    }

    private void setMeasure(String code, @Nullable BigDecimal value) {
        Optional<Step> step = rubric.steps().stream()
                .filter(one -> one.measures().stream()
                        .anyMatch(measure -> measure.code().equals(code)))
                .findFirst();
        if (step.isEmpty()) {
            refusals.add(Refusal.of("sheet.refusal.measure", code));
            return;
        }
        Measure measure = step.get().measures().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow();
        if (value == null) {
            measures.remove(code);
            return;
        }
        Optional<Refusal> refusal = MeasureCheck.refusal("measure." + step.get().code() + "." + code, measure, value);
        refusal.ifPresentOrElse(refusals::add, () -> measures.put(code, plain(value)));
    }

    private void addEvent(SheetChange.AddEvent event) {
        List<Refusal> reasons = eventCheck.refusals(event, events.size());
        if (!reasons.isEmpty()) {
            refusals.addAll(reasons);
            return;
        }
        String stepCode = event.stepCode();
        events.add(new RecordedEvent(
                event.eventId(), event.eventCode(), stepCode, event.reason(), FreeText.tidy(event.actionTaken()), at));
        if (event.eventCode().equals(EventCatalogue.TAKEOVER) && stepCode != null) {
            put(stepCode, new StepState.Scored(1));
            setBlanks(rubric.step(stepCode).phase(), new BySupervisor(Cause.AFTER_TAKEOVER));
        }
    }

    /** A takeover taken back takes its consequences with it: its level 1 and the rest of the phase become blank again. */
    private void removeEvent(UUID id) {
        Optional<RecordedEvent> event =
                events.stream().filter(one -> one.id().equals(id)).findFirst();
        if (event.isEmpty()) {
            refusals.add(Refusal.of("sheet.refusal.event-gone"));
            return;
        }
        events.remove(event.get());
        String stepCode = event.get().stepCode();
        if (!event.get().eventCode().equals(EventCatalogue.TAKEOVER) || stepCode == null) {
            return;
        }
        if (!takenOver(stepCode)) {
            steps.remove(stepCode);
        }
        Phase phase = rubric.step(stepCode).phase();
        if (!takenOver(phase)) {
            rubric.steps().stream()
                    .filter(step -> step.phase() == phase)
                    .forEach(step -> steps.remove(step.code(), new BySupervisor(Cause.AFTER_TAKEOVER)));
        }
    }

    private void setFeedback(SheetChange.SetFeedback feedback) {
        strength = text("strength", strength, feedback.strength());
        nextStep = text("nextStep", nextStep, feedback.nextStep());
    }

    /** What stands on the sheet already was looked through when it was written. */
    private String text(String field, String stored, String raw) {
        String text = FreeText.tidy(raw);
        if (!text.equals(stored)) {
            FreeText.narrative(field, text, FEEDBACK_LENGTH).ifPresent(refusals::add);
        }
        return text;
    }

    private boolean takenOver(String stepCode) {
        return events.stream()
                .anyMatch(event -> event.eventCode().equals(EventCatalogue.TAKEOVER)
                        && Objects.equals(event.stepCode(), stepCode));
    }

    private boolean takenOver(Phase phase) {
        return rubric.steps().stream().anyMatch(step -> step.phase() == phase && takenOver(step.code()));
    }

    private static String field(String stepCode) {
        return "step." + stepCode;
    }

    private Sheet result() {
        boolean scored = steps.values().stream().anyMatch(StepState.Scored.class::isInstance);
        Instant first = sheet.firstScoredAt() == null && scored ? at : sheet.firstScoredAt();
        return new Sheet(
                sheet.id(),
                sheet.caseId(),
                sheet.traineeId(),
                sheet.scorerId(),
                sheet.rubricVersionId(),
                sheet.state(),
                part,
                supervision,
                steps,
                inBulk,
                measures,
                events,
                strength,
                nextStep,
                sheet.openedAt(),
                first,
                sheet.lockVersion(),
                sheet.reopening());
    }
}
