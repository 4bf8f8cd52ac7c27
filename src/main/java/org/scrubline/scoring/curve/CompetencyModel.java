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
 * population parameters ψ maximise the resulting marginal likelihood with its exact gradient. Against R {@code
 * ordinal::clmm} on the static part the log-likelihood agrees to 1e-5 or better; against NUTS at given ψ means agree to
 * .3 of a posterior standard deviation and standard deviations to 6 % (see {@code docs/model.md}).
 *
 * <p>Bands: {@code mean ± 1.645 × 1.12 sd}; the factor stands for the uncertainty of ψ and was set by simulation.
 * Everything is a pure function of its arguments: same scores, same bits, whatever the order of rows or the number of
 * threads (on one kind of processor and JDK). Any scores give finite numbers; thin evidence is answered with the
 * population's law and a sentence. Safe for use by several threads.
 *
 * <p>References (from memory): F. Samejima, Psychometrika 1969;34(S1), doi:10.1007/BF03372160, graded responses; J. M.
 * Linacre, Many-facet Rasch measurement, 1989; H. Rue, S. Martino, N. Chopin, J R Stat Soc B 2009;71:319,
 * doi:10.1111/j.1467-9868.2008.00700.x, nested Laplace.
 */
public final class CompetencyModel {

    /** Version of the engine: changes whenever the same scores could give other numbers. */
    public static final String VERSION = "2";

    /** Widening of bands for the uncertainty of the population parameters. */
    public static final double BAND_FACTOR = 1.12;

    private static final double NORMAL_95 = 1.6448536269514722;

    private final ModelSettings settings;

    /**
     * A model.
     *
     * @param settings terms and priors; priors on thresholds made for as many levels as the scores have
     */
    public CompetencyModel(ModelSettings settings) {
        this.settings = settings;
    }

    /**
     * Fits a programme from the shipped start values; small programmes keep the shipped thresholds and variances, see
     * {@link Estimation#allowedFor}.
     *
     * @param table all scores of one procedure in one programme; without scores the fit is the shipped parameters
     * @return the fit
     */
    public PopulationFit fit(ScoreTable table) {
        Psi shipped = Psi.shipped(table.levels(), table.steps().size(), table.covariates());
        return fit(table, shipped, Estimation.allowedFor(table));
    }

    /**
     * Fits a programme: a limited-memory quasi-Newton search (Liu and Nocedal, Math Program 1989;45:503,
     * doi:10.1007/BF01589116) on the exact gradient, which ends when no scaled derivative is above 1e-3, when a step
     * gains less than 1e-11 of the value, or after 200 steps. It always returns the best point found. A step costs time
     * linear in the number of scores and cubic in that of the supervisors of a connected group.
     *
     * @param table all scores of one procedure in one programme; without scores the start values are kept
     * @param start population parameters to keep or to start from, of the table's levels, steps and covariates, in its
     *     order (not checked)
     * @param estimation which of them the scores decide
     * @return the fit; its estimation is {@link Estimation#GIVEN} when there were no scores
     */
    public PopulationFit fit(ScoreTable table, Psi start, Estimation estimation) {
        return new PopulationFitter(table, settings, Workers.ALL).fit(start, estimation);
    }

    /**
     * Derivatives of the log marginal likelihood at the parameters of a fit, by group ({@code tau} as τ_2 and log gaps,
     * {@code beta} without the last step, {@code ls_*}, {@code lq}, {@code lqg} by logarithms). With this model's prior
     * kernels when the fit estimated parameters; the groups that were free ({@link Estimation#DIFFICULTY}: {@code
     * beta}, {@code rho}, {@code hal}) are then near 0, the others need not be.
     *
     * @param table the scores of the fit
     * @param fit made by a model of the same settings
     * @return derivatives by group, in the order of the search
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
     * the fitted table. The trainee's own share in the fitted severities is taken out first. Steps and supervisors the
     * fit does not know have the prior's law: difficulty 0, severity N(0, σ_λ²). It costs time linear in the trainee's
     * cases and cubic in the supervisors of the connected group.
     *
     * @param fit of the programme
     * @param table scores that include the trainee's; others in it are ignored, but for the one-level scorers of {@link
     *     Evidence}
     * @param trainee id; without scores the result is the population's law
     * @param standard the programme's settings; a critical step the table does not list takes no part in the chance of
     *     the whole case and counts as never seen
     * @return the curve
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's, or a standard asks for a
     *     level the scale lacks
     */
    public static CompetencyCurve smooth(
            PopulationFit fit, ScoreTable table, String trainee, ProcedureStandard standard) {
        return new CurveWriter(fit, table, trainee, standard).write();
    }

    /**
     * Why raw shares and modelled chances of a trainee's steps differ.
     *
     * @param fit of the programme
     * @param table scores that include the trainee's
     * @param trainee id; without scores the result is empty
     * @param standard the programme's settings
     * @return one for each step with a score, in the table's order
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's, or a standard asks for a
     *     level the scale lacks
     */
    public static List<StepGap> gaps(PopulationFit fit, ScoreTable table, String trainee, ProcedureStandard standard) {
        return new CurveWriter(fit, table, trainee, standard).gaps();
    }

    /** Half width of the 90 % band of a posterior standard deviation. */
    static double halfBand(double sd) {
        return NORMAL_95 * BAND_FACTOR * sd;
    }

    /**
     * Curves of all trainees of a table, several at once.
     *
     * @param fit of the programme
     * @param table scores
     * @param standard the programme's settings
     * @return one curve a trainee, in the table's order; the same as {@link #smooth} of each
     * @throws IllegalArgumentException as for one trainee
     */
    public static List<CompetencyCurve> smoothAll(PopulationFit fit, ScoreTable table, ProcedureStandard standard) {
        CompetencyCurve[] curves = new CompetencyCurve[table.trainees().size()];
        Workers.ALL.each(
                curves.length,
                i -> curves[i] = smooth(fit, table, table.trainees().get(i), standard));
        return new ArrayList<>(List.of(curves));
    }
}
