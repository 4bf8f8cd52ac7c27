package org.scrubline.scoring.curve;

import java.util.List;

/**
 * The next typical case against one standard.
 *
 * @param standard the standard
 * @param chance expected chance that every critical step reaches it
 * @param low 5 % point of that chance
 * @param high 95 % point
 * @param assurance probability that the chance is at least the standard's
 * @param steps expected chance per critical step
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

    /** Expected chance that one step reaches the standard's level. */
    public record StepChance(String step, double chance) {}

    public Readiness {
        steps = List.copyOf(steps);
    }
}
