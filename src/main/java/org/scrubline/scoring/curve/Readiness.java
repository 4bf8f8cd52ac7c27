package org.scrubline.scoring.curve;

import java.util.List;

/**
 * The next typical case against one standard: the law of the trainee's state one case ahead, its covariance widened by
 * 1.1, at 256 fixed points, each with the day integrated by nine-point Gauss–Hermite. Numbers are there whatever the
 * evidence.
 *
 * @param standard the standard
 * @param chance expected chance that every critical step reaches it, 0..1; 1 when the table lists no critical step
 * @param low 5 % point of that chance
 * @param high 95 % point
 * @param assurance probability that the chance is at least the standard's, 0..1, in steps of 1/256
 * @param steps expected chance per critical step the table lists
 * @param support what the evidence says
 * @param forecast further cases until the chance is first reached
 */
public record Readiness(
        LevelStandard standard,
        double chance,
        double low,
        double high,
        double assurance,
        List<StepChance> steps,
        Support support,
        Forecast forecast) {

    /**
     * Expected chance that one step reaches the standard's level.
     *
     * @param step step code
     * @param chance 0..1
     */
    public record StepChance(String step, double chance) {}

    /**
     * Copies the list and checks nothing.
     *
     * @param standard kept
     * @param chance kept
     * @param low kept
     * @param high kept
     * @param assurance kept
     * @param steps copied
     * @param support kept
     * @param forecast kept
     */
    public Readiness {
        steps = List.copyOf(steps);
    }
}
