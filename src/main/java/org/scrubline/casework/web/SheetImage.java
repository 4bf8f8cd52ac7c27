package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.RecordedEvent;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.BySupervisor.Cause;

/**
 * A sheet as a device keeps it to go on by itself.
 *
 * @param version lock version the next change is made on
 * @param part empty until confirmed
 * @param supervision empty until said
 * @param steps 1 to 5, BY_SUPERVISOR, AFTER_TAKEOVER, NOT_PART or NOT_SEEN by step code; a blank step has no entry
 * @param measures decimal text by measure code
 */
record SheetImage(
        int version,
        String part,
        String supervision,
        Map<String, String> steps,
        Map<String, String> measures,
        List<Event> events,
        String strength,
        String nextStep) {

    /** An event; step and reason are null where it has none. */
    record Event(
            String id,
            String code,
            @Nullable String step,
            @Nullable String reason,
            String action) {
        static Event of(RecordedEvent event) {
            return new Event(
                    event.id().toString(),
                    event.eventCode(),
                    event.stepCode(),
                    event.reason() == null ? null : event.reason().name(),
                    event.actionTaken());
        }
    }

    static SheetImage of(Sheet sheet) {
        Map<String, String> steps = new TreeMap<>();
        sheet.steps().forEach((code, state) -> steps.put(code, answer(state)));
        Map<String, String> measures = new TreeMap<>();
        sheet.measures().forEach((code, value) -> measures.put(code, value.toPlainString()));
        return new SheetImage(
                sheet.lockVersion(),
                name(sheet.confirmedPart()),
                name(sheet.givenSupervision()),
                steps,
                measures,
                sheet.events().stream().map(Event::of).toList(),
                sheet.strength(),
                sheet.nextStep());
    }

    private static String answer(StepState state) {
        return state.equals(new StepState.BySupervisor(Cause.AFTER_TAKEOVER))
                ? Cause.AFTER_TAKEOVER.name()
                : SheetInput.answer(state);
    }

    private static String name(@Nullable Enum<?> value) {
        return value == null ? "" : value.name();
    }
}
