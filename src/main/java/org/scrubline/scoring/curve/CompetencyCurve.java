package org.scrubline.scoring.curve;

import java.util.List;

/**
 * All that the model says about one trainee and procedure.
 *
 * @param trainee id
 * @param engineVersion version of the engine
 * @param startLevel a, own start level against the population, in logits
 * @param gain g, own gain against the population
 * @param points one per case, oldest first
 * @param prior the population's law before the first score: mean level with its 90 % band, for the dashed start
 * @param steps one per step
 * @param evidence how much the scores carry
 * @param readiness one per standard
 */
public record CompetencyCurve(
        String trainee,
        String engineVersion,
        double startLevel,
        double gain,
        List<CurvePoint> points,
        StepCurve.Chance prior,
        List<StepCurve> steps,
        Evidence evidence,
        List<Readiness> readiness) {

    public CompetencyCurve {
        points = List.copyOf(points);
        steps = List.copyOf(steps);
        readiness = List.copyOf(readiness);
    }
}
