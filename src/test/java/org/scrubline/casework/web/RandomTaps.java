package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Taps as a hurried hand makes them on any sheet, a few of them impossible; the same for the same seed. */
final class RandomTaps {

    private static final List<String> ANSWERS =
            List.of("1", "2", "3", "3", "4", "4", "4", "5", "5", "BY_SUPERVISOR", "NOT_PART", "NOT_SEEN", "7");
    private static final List<String> NUMBERS =
            List.of("0", "1", "0.5", "12,25", "100", "9.99999", "-1", "", "x", "1e1");
    private static final List<String> TEXTS =
            List.of("", "  Calm.  ", "Held the wound e\u0301dge", "a\r\nb", "\u00a0", "Loosen earlier \uD83D\uDE00");

    private final Random random;
    private final Rubric rubric;
    private final EventCatalogue catalogue;

    RandomTaps(long seed, Rubric rubric, EventCatalogue catalogue) {
        this.random = new Random(seed);
        this.rubric = rubric;
        this.catalogue = catalogue;
    }

    /** The fields of the tap with this number, the first being 1. */
    Map<String, String> next(int number) {
        Step step = any(rubric.steps());
        return switch (random.nextInt(14)) {
            case 0 -> Map.of("role", "AS_LOGGED");
            case 1 -> Map.of("part", any(List.of("WHOLE_CASE", "PARTS", "NONE")), "supervision", "NEARBY");
            case 2 -> Map.of("clear", step.code());
            case 3 ->
                Map.of("rest", step.phase().name() + ":" + any(List.of("NOT_SEEN", "NOT_PART", "BY_SUPERVISOR", "4")));
            case 4 -> event(step);
            case 5 ->
                Map.of(
                        "event.code",
                        "TAKEOVER",
                        "event.step",
                        step.code(),
                        "event.reason",
                        any(List.of("TIME", "SAFETY", "TEACHING")));
            case 6 ->
                Map.of(
                        "event.remove",
                        TapEvent.id(SheetRun.SHEET, SheetRun.tapId(1 + random.nextInt(number)))
                                .toString());
            case 7 -> Map.of("strength", any(TEXTS));
            case 8 -> Map.of("nextStep.pick", any(TEXTS));
            case 9 -> measure();
            default -> Map.of("step." + step.code(), any(ANSWERS));
        };
    }

    private Map<String, String> event(Step step) {
        return Map.of(
                "event.code", any(catalogue.kinds()).code(),
                "event.step", random.nextBoolean() ? step.code() : "",
                "event.action", any(TEXTS));
    }

    private Map<String, String> measure() {
        List<Step> measured = rubric.steps().stream()
                .filter(step -> !step.measures().isEmpty())
                .toList();
        Step step = any(measured);
        Measure measure = any(step.measures());
        return Map.of("measure." + step.code() + "." + measure.code(), any(NUMBERS));
    }

    private <T> T any(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }
}
