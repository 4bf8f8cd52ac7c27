package org.scrubline.scoring.curve;

import java.util.List;

/**
 * All that the model says about one trainee and procedure. Numbers are there whatever the evidence; whether they may be
 * shown is {@link Evidence#shown}.
 *
 * @param trainee id
 * @param engineVersion version of the engine
 * @param startLevel a, own start level against the population's 0, in logits
 * @param gain g, own gain against the population's mean gain, in logits
 * @param points one per case with a score, oldest first; empty without scores
 * @param prior the population's law before the first score at no experience: mean level with its 90 % band, for the
 *     dashed start; in logits on the scale of {@link CurvePoint#level}, not a chance
 * @param steps one per step of the table, in its order
 * @param evidence how much the scores carry
 * @param readiness one per standard, in the order given
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

    /**
     * Copies the lists and checks nothing.
     *
     * @param trainee kept
     * @param engineVersion kept
     * @param startLevel kept
     * @param gain kept
     * @param points copied
     * @param prior kept
     * @param steps copied
     * @param evidence kept
     * @param readiness copied
     */
    public CompetencyCurve {
        points = List.copyOf(points);
        steps = List.copyOf(steps);
        readiness = List.copyOf(readiness);
    }
}
