package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** The static part against R {@code ordinal::clmm} 2022.11-16 (reference_model/p1_static_clmm). */
class StaticReferenceTests {

    private static final Terms STATIC = new Terms(false, false, false, false, false, true);
    private final ReferenceSet set = ReferenceSet.read("p1_static_clmm");
    private final ScoreTable table = set.table();
    private final PopulationFit fit = new CompetencyModel(new ModelSettings(STATIC, 20, false, false, PsiPriors.none()))
            .fit(table, Psi.shipped(5, table.steps().size(), 3), Estimation.ALL);

    @Test
    void theLogLikelihoodEqualsClmm() {
        double clmm = set.expected().path("cross_check").path("loglik").asDouble();
        assertThat(fit.logLikelihood()).isCloseTo(clmm, within(1e-3));
        assertThat(fit.logLikelihood())
                .isCloseTo(set.expected().path("laplace_loglik").asDouble(), within(set.tolerance("loglik_abs")));
    }

    @Test
    void thresholdsDifficultiesAndComplexityEqualClmm() {
        JsonNode clmm = set.expected().path("cross_check");
        near(fit.psi().thresholds(), clmm.path("tau"), set.tolerance("tau_beta_gamma_abs"));
        near(fit.psi().difficulty(), clmm.path("beta"), set.tolerance("tau_beta_gamma_abs"));
        near(fit.psi().complexity(), clmm.path("gamma"), set.tolerance("tau_beta_gamma_abs"));
    }

    @Test
    void standardDeviationsEqualClmm() {
        JsonNode sds = set.expected().path("cross_check").path("sds");
        double tolerance = set.tolerance("sd_abs");
        assertThat(fit.psi().levelSd()).isCloseTo(sds.path("trainee").asDouble(), within(tolerance));
        assertThat(fit.psi().assessmentSd()).isCloseTo(sds.path("assessment").asDouble(), within(tolerance));
        assertThat(fit.psi().severitySd()).isCloseTo(sds.path("supervisor").asDouble(), within(tolerance));
    }

    @Test
    void severitiesAndTraineeEffectsEqualTheReference() {
        near(
                fit.severities().stream().map(PopulationFit.Severity::mean).toList(),
                set.expected().path("supervisor_severity"),
                set.tolerance("effects_abs"));
        near(
                fit.severities().stream().map(PopulationFit.Severity::sd).toList(),
                set.expected().path("supervisor_sd_laplace"),
                set.tolerance("effects_abs"));
        List<Double> effects = table.trainees().stream()
                .map(t -> CompetencyModel.smooth(fit, table, t, ProcedureStandard.usual(List.of()))
                        .startLevel())
                .toList();
        near(effects, set.expected().path("cross_check").path("trainee_effects"), set.tolerance("effects_abs"));
    }

    static void near(List<Double> values, JsonNode expected, double tolerance) {
        assertThat(values).hasSize(expected.size());
        for (int i = 0; i < values.size(); i++) {
            assertThat(values.get(i))
                    .as("entry %d", i)
                    .isCloseTo(expected.path(i).asDouble(), within(tolerance));
        }
    }
}
