package org.scrubline.scoring.curve;

import java.util.List;

/**
 * One step of one trainee: chance to reach the curve's level in the programme's typical case, case by case, as the mean
 * supervisor would score it, the day integrated.
 *
 * @param step step code
 * @param seen how often it was scored
 * @param effect the trainee's own strength (+) or weakness (−) on it, in logits
 * @param effectSd its posterior standard deviation
 * @param points one for each case of the curve, whether or not the step was seen in it
 */
public record StepCurve(String step, int seen, double effect, double effectSd, List<Chance> points) {

    /**
     * A number with its 90 % band; of a step a chance, 0..1.
     *
     * @param chance at the posterior mean of the level
     * @param low at the lower end of the level's band
     * @param high at its upper end
     */
    public record Chance(double chance, double low, double high) {}

    /**
     * Copies the list and checks nothing.
     *
     * @param step kept
     * @param seen kept
     * @param effect kept
     * @param effectSd kept
     * @param points copied
     */
    public StepCurve {
        points = List.copyOf(points);
    }
}
