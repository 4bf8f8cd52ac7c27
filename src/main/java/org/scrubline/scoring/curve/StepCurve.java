package org.scrubline.scoring.curve;

import java.util.List;

/**
 * One step of one trainee: chance to reach the curve's level in the programme's typical case, case by case.
 *
 * @param step step code
 * @param seen how often it was scored
 * @param effect the trainee's own strength (+) or weakness (−) on it, in logits
 * @param effectSd its posterior standard deviation
 * @param points one for each case of the curve, whether or not the step was seen in it
 */
public record StepCurve(String step, int seen, double effect, double effectSd, List<Chance> points) {

    /** Chance with its 90 % band, 0..1. */
    public record Chance(double chance, double low, double high) {}

    public StepCurve {
        points = List.copyOf(points);
    }
}
