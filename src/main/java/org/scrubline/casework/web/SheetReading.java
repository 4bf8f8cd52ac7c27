package org.scrubline.casework.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Part;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.BySupervisor;
import org.scrubline.casework.Supervision;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Phase;
import org.scrubline.rubric.TakeoverReason;

/** Reads what a page sent into changes: only what differs from the stored sheet, and every reason why not. */
class SheetReading {

    private static final int LONGEST_NUMBER = 20;

    private final SheetInput sent;
    private final SheetInput stored;
    private final Logged logged;
    private final UUID eventId;
    private final List<SheetChange> changes = new ArrayList<>();
    private final List<Refusal> refusals = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();

    /** What the log says of the trainee's part and the supervision planned. */
    record Logged(Part part, Supervision supervision) {}

    /** {@code eventId} is what an event among what was sent will be known by. */
    SheetReading(SheetInput sent, SheetInput stored, Logged logged, UUID eventId) {
        this.sent = sent;
        this.stored = stored;
        this.logged = logged;
        this.eventId = eventId;
        role();
        for (String name : sent.names()) {
            if (name.startsWith("step.") && sent.says(name) && changed(name)) {
                step(name);
            } else if (name.startsWith("measure.") && changed(name)) {
                measure(name);
            }
        }
        clear();
        removeEvent();
        addEvent();
        rest();
        feedback();
    }

    SheetChange change() {
        return new SheetChange.All(changes);
    }

    boolean nothing() {
        return changes.isEmpty();
    }

    List<Refusal> refusals() {
        return refusals;
    }

    /** Free text that is new, to be looked through for what names a patient. */
    List<String> texts() {
        return texts;
    }

    private boolean changed(String field) {
        return sent.fields().containsKey(field) && !sent.text(field).equals(stored.text(field));
    }

    private void role() {
        if (sent.text("role").equals("AS_LOGGED")) {
            changes.add(new SheetChange.ConfirmRole(logged.part(), logged.supervision()));
            return;
        }
        if (!changed("part") && !changed("supervision")) {
            return;
        }
        SheetInput merged = sent.over(stored);
        Optional<Part> part = constant("part", Part.class, merged.text("part"));
        Optional<Supervision> supervision = constant("supervision", Supervision.class, merged.text("supervision"));
        if (part.isPresent() && supervision.isPresent()) {
            changes.add(new SheetChange.ConfirmRole(part.get(), supervision.get()));
        }
    }

    private void step(String name) {
        String answer = sent.text(name);
        if (answer.matches("[1-5]")) {
            set(name, new StepState.Scored(Integer.parseInt(answer)));
        } else {
            state(name, answer).ifPresent(state -> set(name, state));
        }
    }

    private void set(String name, StepState state) {
        changes.add(new SheetChange.SetStep(name.substring("step.".length()), state));
    }

    private Optional<StepState> state(String field, String answer) {
        StepState state = switch (answer) {
            case "BY_SUPERVISOR" -> new BySupervisor(BySupervisor.Cause.PLAN);
            case "NOT_PART" -> new StepState.NotPart();
            case "NOT_SEEN" -> new StepState.NotSeen();
            default -> null;
        };
        if (state == null) {
            refusals.add(Refusal.at(field, "sheet.refusal.answer"));
        }
        return Optional.ofNullable(state);
    }

    private void clear() {
        if (sent.says("clear")) {
            changes.add(new SheetChange.SetStep(sent.text("clear"), StepState.blank()));
        }
    }

    private void measure(String name) {
        String code = name.substring(name.lastIndexOf('.') + 1);
        String text = FreeText.tidy(sent.text(name)).replace(',', '.');
        if (text.isEmpty()) {
            changes.add(new SheetChange.SetMeasure(code, null));
            return;
        }
        try {
            BigDecimal value = new BigDecimal(text.length() > LONGEST_NUMBER ? "" : text);
            changes.add(new SheetChange.SetMeasure(code, value));
        } catch (NumberFormatException e) {
            refusals.add(Refusal.at(name, "sheet.refusal.number"));
        }
    }

    private void rest() {
        if (!sent.says("rest")) {
            return;
        }
        String[] parts = sent.text("rest").split(":", 2);
        Optional<Phase> phase = constant("rest", Phase.class, parts[0]);
        Optional<StepState> state = state("rest", parts.length == 2 ? parts[1] : "");
        if (phase.isPresent() && state.isPresent()) {
            changes.add(new SheetChange.SetBlankSteps(phase.get(), state.get()));
        }
    }

    private void addEvent() {
        if (!sent.says("event.code")) {
            if (sent.says("event.step") || sent.says("event.action")) {
                refusals.add(Refusal.at("event.code", "sheet.refusal.event"));
            }
            return;
        }
        String action = sent.text("event.action");
        texts.add(action);
        String step = sent.says("event.step") ? sent.text("event.step") : null;
        changes.add(new SheetChange.AddEvent(eventId, sent.text("event.code"), step, reason(), action));
    }

    private @Nullable TakeoverReason reason() {
        return sent.says("event.reason")
                ? constant("event.reason", TakeoverReason.class, sent.text("event.reason"))
                        .orElse(null)
                : null;
    }

    private void removeEvent() {
        if (!sent.says("event.remove")) {
            return;
        }
        try {
            changes.add(new SheetChange.RemoveEvent(UUID.fromString(sent.text("event.remove"))));
        } catch (IllegalArgumentException e) {
            refusals.add(Refusal.at("event.remove", "sheet.refusal.event-gone"));
        }
    }

    private void feedback() {
        String strength = sentence("strength");
        String nextStep = sentence("nextStep");
        if (!strength.equals(stored.text("strength")) || !nextStep.equals(stored.text("nextStep"))) {
            changes.add(new SheetChange.SetFeedback(strength, nextStep));
            texts.add(strength);
            texts.add(nextStep);
        }
    }

    private String sentence(String field) {
        String picked = sent.text(field + ".pick");
        return FreeText.tidy(picked.isBlank() ? sent.over(stored).text(field) : picked);
    }

    private <E extends Enum<E>> Optional<E> constant(String field, Class<E> type, String name) {
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equals(name)) {
                return Optional.of(constant);
            }
        }
        refusals.add(Refusal.at(field, "sheet.refusal.choice." + field));
        return Optional.empty();
    }
}
