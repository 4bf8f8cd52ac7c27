package org.scrubline.scoring.curve;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The fitted population: everything that smoothing one trainee needs, and nothing of the scores. Made to be stored.
 *
 * @param engineVersion version of the engine that made it
 * @param terms random terms of the model
 * @param kappa cases after which 63 % of the gain is reached
 * @param estimation which parameters the scores decided; none when there were no scores
 * @param psi population parameters; difficulties in the order of {@code steps}, habits in that of {@code supervisors}
 * @param steps step codes
 * @param supervisors ids of all supervisors, the panel
 * @param logLikelihood Laplace log marginal likelihood; with the prior kernels, without their constants, when
 *     parameters were estimated
 * @param trainees number of trainees with scores
 * @param assessments number of assessments
 * @param scores number of scores
 * @param caseMix mean complexity over all assessments, one a covariate: the typical case; 0 without assessments
 * @param groups supervisors by connected group, with their severities; every supervisor is in one
 */
public record PopulationFit(
        String engineVersion,
        Terms terms,
        double kappa,
        Estimation estimation,
        Psi psi,
        List<String> steps,
        List<String> supervisors,
        double logLikelihood,
        int trainees,
        int assessments,
        int scores,
        List<Double> caseMix,
        List<SeverityGroup> groups) {

    /**
     * Copies the lists and checks nothing.
     *
     * @param engineVersion kept
     * @param terms kept
     * @param kappa kept
     * @param estimation kept
     * @param psi kept
     * @param steps copied
     * @param supervisors copied
     * @param logLikelihood kept
     * @param trainees kept
     * @param assessments kept
     * @param scores kept
     * @param caseMix copied
     * @param groups copied
     */
    public PopulationFit {
        steps = List.copyOf(steps);
        supervisors = List.copyOf(supervisors);
        caseMix = List.copyOf(caseMix);
        groups = List.copyOf(groups);
    }

    /**
     * Severity of one supervisor.
     *
     * @param supervisor id
     * @param mean posterior mean in logits; above 0 = scores lower than colleagues
     * @param sd posterior standard deviation in logits
     */
    public record Severity(String supervisor, double mean, double sd) {}

    /**
     * {@return the severities of all supervisors in the order of {@link #supervisors}; one without scores has the
     * prior's}
     */
    public List<Severity> severities() {
        Map<String, Severity> all = new HashMap<>();
        for (SeverityGroup group : groups) {
            double[] covariance = group.covariance();
            for (int v = 0; v < group.supervisors().size(); v++) {
                Severity severity = severity(group, v, covariance);
                all.put(severity.supervisor(), severity);
            }
        }
        return supervisors.stream()
                .map(id -> Objects.requireNonNull(all.get(id)))
                .toList();
    }

    /**
     * {@return the severity of one supervisor; empty for one the fit does not know}
     *
     * @param supervisor id
     */
    public Optional<Severity> severity(String supervisor) {
        for (SeverityGroup group : groups) {
            int v = group.supervisors().indexOf(supervisor);
            if (v >= 0) {
                return Optional.of(severity(group, v, group.covariance()));
            }
        }
        return Optional.empty();
    }

    private static Severity severity(SeverityGroup group, int v, double[] covariance) {
        double sd = Math.sqrt(covariance[v * group.supervisors().size() + v]);
        return new Severity(group.supervisors().get(v), group.severity().get(v), sd);
    }

    /**
     * {@return the mean severity of all supervisors in logits, those without scores included; 0 without supervisors}
     */
    public double panelSeverity() {
        double sum = 0;
        for (SeverityGroup group : groups) {
            for (double severity : group.severity()) {
                sum += severity;
            }
        }
        return supervisors.isEmpty() ? 0 : sum / supervisors.size();
    }

    /**
     * The parameters laid out for a table that may list other steps and supervisors: a step the fit does not know has
     * the prior's difficulty 0, a new supervisor has no habits.
     */
    Psi psiFor(ScoreTable table) {
        boolean fits = table.assessments() == 0
                || table.covariates() == psi.complexity().size();
        if (table.levels() != psi.levels() || !fits) {
            throw new IllegalArgumentException("these scores have " + table.levels() + " levels and "
                    + table.covariates() + " complexity values, the fit has " + psi.levels() + " and "
                    + psi.complexity().size());
        }
        return new Psi(
                psi.thresholds(),
                pick(table.steps(), steps, psi.difficulty()),
                psi.complexity(),
                psi.gain(),
                psi.gapLoss(),
                psi.levelSd(),
                psi.gainSd(),
                psi.stepSd(),
                psi.assessmentSd(),
                psi.severitySd(),
                psi.pairSd(),
                psi.walk(),
                psi.gapWalk(),
                pick(table.supervisors(), supervisors, psi.range()),
                pick(table.supervisors(), supervisors, psi.halo()));
    }

    private static List<Double> pick(List<String> wanted, List<String> known, List<Double> values) {
        if (wanted.equals(known)) {
            return values;
        }
        Map<String, Double> byId = new HashMap<>();
        for (int i = 0; i < values.size(); i++) {
            byId.put(known.get(i), values.get(i));
        }
        return wanted.stream().map(id -> byId.getOrDefault(id, 0.0)).toList();
    }
}
