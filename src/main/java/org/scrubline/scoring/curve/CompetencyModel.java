package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The dynamic many-facet ordinal competency model. For assessment j of trainee t by supervisor v, step s:
 *
 * <pre>
 * l = a_t + (μ_g + g_t) f(n) + r_tn − φ H_n + d_ts + ν_tv + u_j − λ_v − β_s − γ'x_j,   f(n) = 1 − exp(−n/κ)
 * P(y ≥ k) = 1 / (1 + exp(T_vk − l)),   T_vk = τ̄ + exp(ρ_v)(τ_k − τ̄)
 * </pre>
 *
 * <p>Effects of trainees, supervisors and assessments have normal laws and are integrated by Laplace's method; the
 * population parameters ψ maximise the resulting marginal likelihood with its exact gradient. Against R
 * {@code ordinal::clmm} on the static part the log-likelihood agrees to 1e-5 or better; against NUTS at given ψ the
 * bands agree to 3 % of a standard deviation (see {@code docs/model.md}).
 *
 * <p>Bands: {@code mean ± 1.645 × 1.12 sd}; the factor stands for the uncertainty of ψ and was set by simulation.
 * Everything is a pure function of its arguments: same scores, same bits, whatever the order of rows or the number of
 * threads (on one kind of processor and JDK). Any scores give finite numbers; thin evidence is answered with the
 * population's law and a sentence. Safe for use by several threads.
 *
 * <p>References (from memory): F. Samejima 1969, graded responses; J. M. Linacre 1989, many-facet measurement; H. Rue,
 * S. Martino, N. Chopin 2009, doi:10.1111/j.1467-9868.2008.00700.x, nested Laplace.
 */
public final class CompetencyModel {

    /** Version of the engine: changes whenever the same scores could give other numbers. */
    public static final String VERSION = "2";

    /** Widening of bands for the uncertainty of the population parameters. */
    public static final double BAND_FACTOR = 1.12;

    private static final double NORMAL_95 = 1.6448536269514722;

    private final ModelSettings settings;

    public CompetencyModel(ModelSettings settings) {
        this.settings = settings;
    }

    /**
     * Fits a programme from the shipped start values; small programmes keep the shipped thresholds and variances, see
     * {@link Estimation#allowedFor}.
     *
     * @param table all scores of one procedure in one programme; may be empty
     */
    public PopulationFit fit(ScoreTable table) {
        Psi shipped = Psi.shipped(table.levels(), table.steps().size(), table.covariates());
        return fit(table, shipped, Estimation.allowedFor(table));
    }

    /**
     * Fits a programme.
     *
     * @param start population parameters to keep or to start from
     * @param estimation which of them the scores decide
     */
    public PopulationFit fit(ScoreTable table, Psi start, Estimation estimation) {
        return new PopulationFitter(table, settings, Workers.ALL).fit(start, estimation);
    }

    /**
     * Derivatives of the log marginal likelihood at the parameters of a fit, by group ({@code tau} as τ_2 and log gaps,
     * {@code beta} without the last step, {@code ls_*}, {@code lq}, {@code lqg} by logarithms). With the prior kernels
     * when the fit estimated its parameters, then all near 0.
     */
    public Map<String, List<Double>> gradient(ScoreTable table, PopulationFit fit) {
        boolean given = fit.estimation() == Estimation.GIVEN;
        PsiPriors priors = given ? PsiPriors.none() : settings.priors();
        ModelSettings same = new ModelSettings(
                fit.terms(), fit.kappa(), settings.supervisorRange(), settings.supervisorHalo(), priors);
        PopulationFitter fitter = new PopulationFitter(table, same, Workers.ALL);
        double[] gradient = fitter.gradient(fit.psi());
        Map<String, List<Double>> groups = new LinkedHashMap<>();
        for (String group : fitter.layout().groups()) {
            int start = fitter.layout().start(group);
            int end = start + fitter.layout().length(group);
            groups.put(group, Arrays.stream(gradient, start, end).boxed().toList());
        }
        return groups;
    }

    /**
     * Smooths one trainee given a fit: after a sign-off with the trainee's scores of this moment, or for any trainee of
     * the fitted table. The trainee's own share in the fitted severities is taken out first.
     *
     * @param table scores that include the trainee's; others in it are ignored
     * @param trainee id; without scores the result is the population's law
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's
     */
    public static CompetencyCurve smooth(
            PopulationFit fit, ScoreTable table, String trainee, ProcedureStandard standard) {
        return new CurveWriter(fit, table, trainee, standard).write();
    }

    /**
     * Why raw shares and modelled chances of a trainee's steps differ; one for each step with a score, in the table's
     * order.
     */
    public static List<StepGap> gaps(PopulationFit fit, ScoreTable table, String trainee, ProcedureStandard standard) {
        return new CurveWriter(fit, table, trainee, standard).gaps();
    }

    /** Half width of the 90 % band of a posterior standard deviation. */
    static double halfBand(double sd) {
        return NORMAL_95 * BAND_FACTOR * sd;
    }

    /** Turns a fit's curves of several trainees around at once, in the table's order. */
    public static List<CompetencyCurve> smoothAll(PopulationFit fit, ScoreTable table, ProcedureStandard standard) {
        CompetencyCurve[] curves = new CompetencyCurve[table.trainees().size()];
        Workers.ALL.each(
                curves.length,
                i -> curves[i] = smooth(fit, table, table.trainees().get(i), standard));
        return new ArrayList<>(List.of(curves));
    }
}
