package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;

/**
 * The range a programme's trainees are expected in at some experience: 10 to 90 % of the fitted population, before any
 * score of the trainee at hand. Steady practice without long absences; population parameters and the panel's mean
 * severity are taken as known.
 *
 * @param experience cases done before
 * @param low 10 % point
 * @param middle median
 * @param high 90 % point
 */
public record ExpectedRange(double experience, double low, double middle, double high) {

    private static final double NORMAL_90 = 1.2815515655446004;

    /**
     * Expected levels over all steps, in logits on the scale of {@link CurvePoint#level}: normal with mean {@code μ_g
     * f(n)} less the level's threshold and the panel's mean severity, and variance {@code σ_a² + f(n)² σ_g² + (n + 1) q
     * + σ_d² / steps}, from the start level, the gain, the walk and the steps.
     *
     * @param fit of the programme
     * @param level level the curve is drawn against, 2..K
     * @param cases last experience
     * @return one for each experience of 0..cases; empty when {@code cases} is negative
     * @throws IndexOutOfBoundsException when the scale lacks the level
     */
    public static List<ExpectedRange> levels(PopulationFit fit, int level, int cases) {
        ModelPoint point = new ModelPoint(fit.psi(), fit.kappa(), 0);
        double steps = Math.max(fit.steps().size(), 1);
        double shift = fit.psi().threshold(level) + fit.panelSeverity();
        List<ExpectedRange> range = new ArrayList<>();
        for (int n = 0; n <= cases; n++) {
            double middle = point.gain * point.growth(n) - shift;
            double half = NORMAL_90 * Math.sqrt(variance(point, n) + point.stepVariance / steps);
            range.add(new ExpectedRange(n, middle - half, middle, middle + half));
        }
        return range;
    }

    /**
     * Expected chances of one step in the programme's typical case, 0..1 on the scale of {@link StepCurve}: points of
     * the level on this step, whose variance holds σ_d² undivided, each carried over to a chance with the day
     * integrated.
     *
     * @param fit of the programme
     * @param step step code the fit knows
     * @param level level the curve is drawn against, 2..K
     * @param cases last experience
     * @return one for each experience of 0..cases; empty when {@code cases} is negative
     * @throws IndexOutOfBoundsException when the fit does not know the step or the scale lacks the level
     */
    public static List<ExpectedRange> chances(PopulationFit fit, String step, int level, int cases) {
        ModelPoint point = new ModelPoint(fit.psi(), fit.kappa(), 0);
        double harder = point.beta[fit.steps().indexOf(step)] + fit.psi().threshold(level) + fit.panelSeverity();
        for (int x = 0; x < point.gamma.length && x < fit.caseMix().size(); x++) {
            harder += point.gamma[x] * fit.caseMix().get(x);
        }
        WholeCase chance = new WholeCase(0, point.assessmentVarianceOfAll);
        List<ExpectedRange> range = new ArrayList<>();
        for (int n = 0; n <= cases; n++) {
            double middle = point.gain * point.growth(n) - harder;
            double half = NORMAL_90 * Math.sqrt(variance(point, n) + point.stepVariance);
            range.add(new ExpectedRange(n, chance.one(middle - half), chance.one(middle), chance.one(middle + half)));
        }
        return range;
    }

    private static double variance(ModelPoint point, int n) {
        double f = point.growth(n);
        return point.levelVariance + f * f * point.gainVariance + (n + 1) * point.walkVariance(1, 0);
    }
}
