package org.scrubline.demo.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.TakeoverReason;

/** Draws what happened in a case beyond the plan. All rates are invented. */
final class Events {

    /** Highest level of a step on which such an event happened. */
    private static final Map<String, Integer> HIGHEST = Map.of(
            "TEAR_REPAIRED",
            3,
            "FLAP_HOLE_REPAIRED",
            2,
            "FLAP_AMPUTATION",
            1,
            "SHALLOW_CHAMBER",
            3,
            "VITREOUS_LOSS",
            2,
            EventCatalogue.SPONGE_RETAINED,
            1,
            EventCatalogue.TAKEOVER,
            1);

    private static final double TEAR = .04;
    private static final double FLAP = .012;
    private static final double AMPUTATION_SHARE = .25;
    private static final double SHALLOW = .06;
    private static final double VITREOUS = .007;

    /** More often where a trainee's weak step lies. */
    private static final Map<String, Double> TEAR_OF = Map.of("T11", .12);

    private static final Map<String, Double> FLAP_OF = Map.of("T08", .05);
    private static final Map<String, Double> SHALLOW_OF = Map.of("T12", .14);

    /** Takeovers for safety: 4 % at the usual level, rarer with skill. */
    private static final double TAKEOVER_SLOPE = .045;

    private static final double TAKEOVER_NEVER = 4.3;

    private final String trainee;
    private final Rubric rubric;
    private final Draws draws;
    private final List<PlannedEvent> events = new ArrayList<>();

    private Events(String trainee, Rubric rubric, Draws draws) {
        this.trainee = trainee;
        this.rubric = rubric;
        this.draws = draws;
    }

    /**
     * The events of one case, at most one on a step.
     *
     * @param shown level the trainee shows in this case
     */
    static List<PlannedEvent> draw(String trainee, Rubric rubric, double shown, Draws draws) {
        Events events = new Events(trainee, rubric, draws);
        events.happen(shown);
        return events.events;
    }

    /** Highest level a step can have beside these events, 5 without any. */
    static int highest(List<PlannedEvent> events, String step) {
        return events.stream()
                .filter(event -> event.step().equals(step))
                .mapToInt(event -> HIGHEST.getOrDefault(event.code(), Step.LEVELS))
                .min()
                .orElse(Step.LEVELS);
    }

    private void happen(double shown) {
        tissue("TEAR_REPAIRED", TEAR_OF.getOrDefault(trainee, TEAR), "Closed with one stitch", "TF03", "TL03", "GD02");
        boolean amputated = draws.chance(AMPUTATION_SHARE);
        tissue(
                amputated ? "FLAP_AMPUTATION" : "FLAP_HOLE_REPAIRED",
                FLAP_OF.getOrDefault(trainee, FLAP),
                amputated ? "New flap beside the old one" : "Closed with one stitch",
                "TF09");
        tissue("SHALLOW_CHAMBER", SHALLOW_OF.getOrDefault(trainee, SHALLOW), "Refilled through the side port", "TF18");
        tissue("VITREOUS_LOSS", VITREOUS, "Cleared from the wound", "TF13");
        takeOver(shown);
    }

    private void tissue(String code, double rate, String action, String... steps) {
        boolean happens = draws.chance(rate);
        for (String step : steps) {
            if (happens && rubric.find(step).isPresent()) {
                events.add(new PlannedEvent(code, step, null, action));
            }
        }
    }

    private void takeOver(double shown) {
        boolean happens = draws.chance(Math.max(0, TAKEOVER_SLOPE * (TAKEOVER_NEVER - shown)));
        Step step = draws.pick(rubric.criticalSteps());
        boolean free = events.stream().noneMatch(event -> event.step().equals(step.code()));
        if (happens && free && !step.onlyWhenConverted()) {
            events.add(new PlannedEvent(
                    EventCatalogue.TAKEOVER, step.code(), TakeoverReason.SAFETY, "The supervisor went on for safety"));
        }
    }

    /** A count that did not come out even. */
    static PlannedEvent unevenCount() {
        return new PlannedEvent(
                EventCatalogue.SPONGE_RETAINED,
                "TF07",
                null,
                "Pocket searched again, count still uneven, X-ray asked for");
    }

    /** Bleeding found at a visit. */
    static PlannedEvent lateBleeding() {
        return new PlannedEvent("OTHER", "PC07", null, "Late choroidal bleeding seen, senior called at once");
    }
}
