package org.scrubline.casework.web;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/**
 * A sheet as its page sends and shows it: a text for each named field, possibly one that cannot be accepted.
 *
 * <p>Fields: {@code part}, {@code supervision}, {@code role} (AS_LOGGED confirms both), {@code step.CODE} (1 to 5,
 * BY_SUPERVISOR, NOT_PART, NOT_SEEN), {@code clear} (a step code), {@code rest} (PHASE:STATE), {@code
 * measure.STEP.MEASURE}, {@code event.code}, {@code event.step}, {@code event.reason}, {@code event.action}, {@code
 * event.remove} (an event's id), {@code strength}, {@code nextStep} and the picked sentences {@code strength.pick},
 * {@code nextStep.pick}.
 */
record SheetInput(Map<String, String> fields) {

    SheetInput {
        fields = Map.copyOf(fields);
    }

    /** What the stored sheet would send. */
    static SheetInput of(Rubric rubric, Sheet sheet) {
        Map<String, String> fields = new LinkedHashMap<>();
        if (sheet.confirmedPart() != null) {
            fields.put("part", sheet.confirmedPart().name());
        }
        if (sheet.givenSupervision() != null) {
            fields.put("supervision", sheet.givenSupervision().name());
        }
        for (Step step : rubric.steps()) {
            fields.put("step." + step.code(), answer(sheet.step(step.code())));
            step.measures()
                    .forEach(measure -> fields.put(
                            "measure." + step.code() + "." + measure.code(),
                            sheet.measures().containsKey(measure.code())
                                    ? sheet.measures().get(measure.code()).toPlainString()
                                    : ""));
        }
        fields.put("strength", sheet.strength());
        fields.put("nextStep", sheet.nextStep());
        return new SheetInput(fields);
    }

    /** What a form sent; of several values for one field the last counts. */
    static SheetInput of(Map<String, List<String>> parameters) {
        Map<String, String> fields = new LinkedHashMap<>();
        parameters.forEach((name, values) -> fields.put(name, values.isEmpty() ? "" : values.get(values.size() - 1)));
        return new SheetInput(fields);
    }

    /** This input where it says something, the other elsewhere. */
    SheetInput over(SheetInput stored) {
        Map<String, String> merged = new LinkedHashMap<>(stored.fields());
        merged.putAll(fields);
        return new SheetInput(merged);
    }

    String text(String field) {
        return fields.getOrDefault(field, "");
    }

    boolean says(String field) {
        return !text(field).isBlank();
    }

    Collection<String> names() {
        return fields.keySet().stream().sorted().toList();
    }

    /** The answer of a state: its level, its name, or nothing while blank. */
    static String answer(StepState state) {
        return state.fold(String::valueOf, cause -> "BY_SUPERVISOR", () -> "NOT_PART", () -> "NOT_SEEN", () -> "");
    }
}
