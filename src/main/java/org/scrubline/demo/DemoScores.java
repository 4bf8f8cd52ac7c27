package org.scrubline.demo;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import org.scrubline.demo.DemoCast.Supervisor;
import org.scrubline.demo.DemoCast.Trainee;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Draws the levels of one invented case. All figures are invented. */
final class DemoScores {

    /** How much easier a step is than the average one, in levels. */
    private static final Map<String, Double> EASE = Map.ofEntries(
            Map.entry("TF01", .5),
            Map.entry("TF02", .3),
            Map.entry("TF03", 0.),
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
            Map.entry("TF19", .3));

    private static final double USUAL = 3.4;
    private static final double CASE_SD = .3;
    private static final double STEP_SD = .4;

    private final Random random;

    DemoScores(Random random) {
        this.random = random;
    }

    /**
     * Levels 1 to 5 by step code, in the order of the rubric.
     *
     * @param caseNumber how many cases the trainee has done before
     */
    Map<String, Integer> draw(Rubric rubric, Trainee trainee, Supervisor scorer, int caseNumber, Band band) {
        double skill = trainee.ceiling()
                - (trainee.ceiling() - trainee.start()) * Math.exp(-caseNumber / trainee.pace())
                - cost(band)
                + random.nextGaussian() * CASE_SD;
        Map<String, Double> own = new LinkedHashMap<>();
        for (Step step : rubric.steps()) {
            own.put(
                    step.code(),
                    skill
                            + EASE.getOrDefault(step.code(), 0.)
                            + trainee.weak().getOrDefault(step.code(), 0.)
                            + random.nextGaussian() * STEP_SD);
        }
        double impression =
                own.values().stream().mapToDouble(Double::doubleValue).average().orElse(USUAL);
        Map<String, Integer> levels = new LinkedHashMap<>();
        own.forEach((code, value) -> levels.put(code, level(scorer, value, impression)));
        return levels;
    }

    /** What the trainee would say of the own steps. */
    Map<String, Integer> selfScores(Map<String, Integer> levels, Trainee trainee) {
        Map<String, Integer> self = new LinkedHashMap<>();
        levels.forEach((code, level) -> self.put(code, clamp(level + trainee.selfBias() + random.nextGaussian() * .5)));
        return self;
    }

    private static int level(Supervisor scorer, double own, double impression) {
        double seen = (1 - scorer.halo()) * own + scorer.halo() * impression;
        return clamp(USUAL + scorer.spread() * (seen - USUAL) + scorer.offset());
    }

    private static int clamp(double level) {
        return (int) Math.max(1, Math.min(5, Math.round(level)));
    }

    private static double cost(Band band) {
        return switch (band) {
            case A -> 0;
            case B -> .2;
            case C -> .4;
            case D -> .7;
        };
    }
}
