package org.scrubline.demo.plan;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.demo.plan.DemoCast.Trainee;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Draws the levels of one sheet: what the trainee did, seen through the scorer's habits. All figures are invented. */
final class Levels {

    /** How much easier a step is than the average one, in levels; a step without an entry is average. */
    private static final Map<String, Double> EASE = Map.ofEntries(
            Map.entry("TF01", .5),
            Map.entry("TF02", .3),
            Map.entry("TF04", .2),
            Map.entry("TF05", .1),
            Map.entry("TF06", .2),
            Map.entry("TF07", .3),
            Map.entry("TF08", -.1),
            Map.entry("TF09", -.5),
            Map.entry("TF10", -.2),
            Map.entry("TF11", .4),
            Map.entry("TF12", -.3),
            Map.entry("TF13", -.2),
            Map.entry("TF14", -.3),
            Map.entry("TF15", -.4),
            Map.entry("TF16", -.2),
            Map.entry("TF17", .4),
            Map.entry("TF18", -.2),
            Map.entry("TF19", .3),
            Map.entry("TL04", .2),
            Map.entry("TL06", .2),
            Map.entry("TL16", -.2),
            Map.entry("GD01", .5),
            Map.entry("GD11", -.2),
            Map.entry("GD12", .4),
            Map.entry("DS01", -.1),
            Map.entry("DS02", -.5),
            Map.entry("DS08", -.2),
            Map.entry("GS01", .5),
            Map.entry("GS07", .4),
            Map.entry("ND06", .4),
            Map.entry("PC08", .4));

    static final double CASE_SD = .30;

    private static final double STEP_SD = .40;

    /** How differently two look at one step of one film. */
    private static final double FILM_SD = .25;

    private static final double USUAL = 3.4;
    private static final double SELF_SD = .5;

    /** One supervisor is stricter on these steps beyond the general habit. */
    private static final String STRICT_ON_STEPS = "S07";

    private static final Set<String> STRICT_STEPS = Set.of("TF09", "TF14", "TF15", "TF16");
    private static final double STRICTER = .35;

    /** One sees single steps more erratically. */
    private static final String ERRATIC = "S09";

    private static final double ERRATIC_SD = .35;

    /** One uses less of the scale the later the score: this much less at a delay of {@link #FLAT_DAYS} days. */
    private static final String FLATTER_WHEN_LATE = "S06";

    private static final double FLATTER = .35;
    private static final double FLAT_DAYS = 14;

    private final long seed;

    Levels(long seed) {
        this.seed = seed;
    }

    /**
     * Levels 1 to 5 by step code, in the order of the rubric.
     *
     * @param shown level the trainee shows in this case, before the ease of a step
     * @param days from the case to the signature
     */
    Map<String, Integer> draw(
            Rubric rubric, Trainee trainee, Supervisor scorer, double shown, double days, Draws draws) {
        double view = ownView(trainee, scorer);
        double sd = Math.hypot(STEP_SD, scorer.id().equals(ERRATIC) ? ERRATIC_SD : 0);
        Map<String, Double> own = new LinkedHashMap<>();
        for (Step step : rubric.steps()) {
            own.put(step.code(), shown + view + stepLevel(trainee, step.code()) + draws.normal(sd));
        }
        return levels(scorer, own, days);
    }

    private static Map<String, Integer> levels(Supervisor scorer, Map<String, Double> own, double days) {
        double impression =
                own.values().stream().mapToDouble(Double::doubleValue).average().orElse(USUAL);
        Map<String, Integer> levels = new LinkedHashMap<>();
        own.forEach((code, value) -> levels.put(code, level(scorer, code, value, impression, days)));
        return levels;
    }

    /** What the trainee says of the own steps. */
    Map<String, Integer> self(Rubric rubric, Trainee trainee, double shown, Draws draws) {
        Map<String, Integer> levels = new LinkedHashMap<>();
        rubric.steps().stream()
                .map(Step::code)
                .forEach(code -> levels.put(
                        code, clamp(shown + stepLevel(trainee, code) + trainee.selfBias() + draws.normal(SELF_SD))));
        return levels;
    }

    /** What a film shows of each step, in levels by step code, whoever looks at it. */
    Map<String, Double> truth(Rubric rubric, double shown, Draws draws) {
        Map<String, Double> truth = new LinkedHashMap<>();
        rubric.steps().stream()
                .map(Step::code)
                .forEach(code -> truth.put(code, shown + EASE.getOrDefault(code, 0.) + draws.normal(STEP_SD)));
        return truth;
    }

    /** Levels 1 to 5 by step code that a supervisor gives what a film shows, on the day of looking at it. */
    Map<String, Integer> film(Map<String, Double> truth, Supervisor scorer, Draws draws) {
        double view = draws.normal(scorer.ownView());
        double sd = Math.hypot(FILM_SD, scorer.id().equals(ERRATIC) ? ERRATIC_SD : 0);
        Map<String, Double> own = new LinkedHashMap<>();
        truth.forEach((code, level) -> own.put(code, level + view + draws.normal(sd)));
        return levels(scorer, own, 0);
    }

    /** Levels a band of complexity costs. */
    static double cost(Band band) {
        return switch (band) {
            case A -> 0;
            case B -> .2;
            case C -> .4;
            case D -> .7;
        };
    }

    private static double stepLevel(Trainee trainee, String code) {
        return EASE.getOrDefault(code, 0.) + trainee.weak().getOrDefault(code, 0.);
    }

    /** The same whenever these two meet. */
    private double ownView(Trainee trainee, Supervisor scorer) {
        return Draws.of(seed, trainee.id().hashCode(), scorer.id().hashCode()).normal(scorer.ownView());
    }

    private static int level(Supervisor scorer, String code, double own, double impression, double days) {
        double seen = (1 - scorer.halo()) * own + scorer.halo() * impression;
        boolean strict = scorer.id().equals(STRICT_ON_STEPS) && STRICT_STEPS.contains(code);
        return clamp(USUAL + spread(scorer, days) * (seen - USUAL) + scorer.offset() - (strict ? STRICTER : 0));
    }

    private static double spread(Supervisor scorer, double days) {
        return scorer.id().equals(FLATTER_WHEN_LATE)
                ? scorer.spread() * (1 - FLATTER * Math.min(1, days / FLAT_DAYS))
                : scorer.spread();
    }

    private static int clamp(double level) {
        return (int) Math.max(1, Math.min(5, Math.round(level)));
    }
}
