package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.scoring.curve.StaticReferenceTests.near;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.JsonNode;

/**
 * The dynamic model against an independent program and against Stan 2.21 NUTS (reference_model/p2, parameters given;
 * p3, parameters estimated).
 */
class DynamicReferenceTests {

    enum Set {
        GIVEN("p2_dynamic_given_psi", Estimation.GIVEN, PsiPriors.none()),
        FITTED("p3_dynamic_fit", Estimation.ALL, PsiPriors.defaults(5));

        private final String name;
        private final Estimation estimation;
        private final PsiPriors priors;

        Set(String name, Estimation estimation, PsiPriors priors) {
            this.name = name;
            this.estimation = estimation;
            this.priors = priors;
        }

        Fitted fit() {
            ReferenceSet set = ReferenceSet.read(name);
            ScoreTable table = set.table();
            Psi start = estimation == Estimation.GIVEN
                    ? set.psi()
                    : Psi.shipped(5, table.steps().size(), 3);
            PopulationFit fit = new CompetencyModel(new ModelSettings(Terms.FULL, 20, false, false, priors))
                    .fit(table, start, estimation);
            return new Fitted(set, table, fit);
        }
    }

    /** One set and its fit, made anew for every test. */
    record Fitted(ReferenceSet set, ScoreTable table, PopulationFit fit) {

        double tolerance(String name) {
            return set.tolerance(name);
        }

        JsonNode trainees() {
            return set.expected().path("trainees");
        }

        List<String> critical() {
            List<String> codes = new ArrayList<>();
            set.expected().path("critical_steps").forEach(c -> codes.add(c.asString()));
            return codes;
        }

        CompetencyCurve curve(JsonNode expected) {
            return CompetencyModel.smooth(
                    fit, table, expected.path("trainee").asString(), ProcedureStandard.usual(critical()));
        }
    }

    @ParameterizedTest
    @EnumSource
    void theLogLikelihoodEqualsTheReference(Set of) {
        Fitted s = of.fit();
        assertThat(s.fit.logLikelihood())
                .isCloseTo(s.set.expected().path("laplace_loglik").asDouble(), within(s.tolerance("loglik_abs")));
    }

    @ParameterizedTest
    @EnumSource
    void populationParametersEqualTheReference(Set of) {
        Fitted s = of.fit();
        Psi expected = s.set.psi();
        double tolerance = s.tolerance("psi_tau_beta_gamma_abs");
        assertThat(s.fit.psi().thresholds()).hasSize(4);
        for (int k = 0; k < 4; k++) {
            assertThat(s.fit.psi().thresholds().get(k))
                    .isCloseTo(expected.thresholds().get(k), within(tolerance));
        }
        near(s.fit.psi().difficulty(), s.set.expected().path("psi").path("beta"), tolerance);
        near(s.fit.psi().complexity(), s.set.expected().path("psi").path("gamma"), tolerance);
        double log = s.tolerance("psi_logsd_abs");
        assertThat(Math.log(s.fit.psi().levelSd() / expected.levelSd())).isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().gainSd() / expected.gainSd())).isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().stepSd() / expected.stepSd())).isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().assessmentSd() / expected.assessmentSd()))
                .isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().severitySd() / expected.severitySd())).isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().pairSd() / expected.pairSd())).isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().walk() / expected.walk())).isCloseTo(0, within(log));
        assertThat(Math.log(s.fit.psi().gapWalk() / expected.gapWalk())).isCloseTo(0, within(log));
    }

    @ParameterizedTest
    @EnumSource
    void severitiesEqualTheReference(Set of) {
        Fitted s = of.fit();
        JsonNode expected = s.set.expected().path("supervisors");
        List<PopulationFit.Severity> severities = s.fit.severities();
        near(
                severities.stream().map(PopulationFit.Severity::mean).toList(),
                expected.path("severity"),
                s.tolerance("severity_abs"));
        near(
                severities.stream().map(PopulationFit.Severity::sd).toList(),
                expected.path("sd"),
                s.tolerance("severity_abs"));
    }

    @ParameterizedTest
    @EnumSource
    void curvesAndTheirSpreadEqualTheReference(Set of) {
        Fitted s = of.fit();
        double mean = s.tolerance("mean_abs");
        double relative = s.tolerance("sd_rel");
        assertThat(s.trainees().size()).isEqualTo(s.table.trainees().size());
        for (JsonNode expected : s.trainees()) {
            CompetencyCurve curve = s.curve(expected);
            List<CurvePoint> p = curve.points();
            near(p.stream().map(CurvePoint::plainLevel).toList(), expected.path("ability_minus_tau4_mean"), mean);
            near(p.stream().map(CurvePoint::level).toList(), expected.path("panel_mean"), mean);
            relative(p.stream().map(CurvePoint::plainSd).toList(), expected.path("ability_sd"), relative);
            relative(p.stream().map(CurvePoint::sd).toList(), expected.path("panel_sd"), relative);
            assertThat(curve.startLevel()).isCloseTo(expected.path("a").asDouble(), within(mean));
            assertThat(curve.gain()).isCloseTo(expected.path("g").asDouble(), within(mean));
            near(curve.steps().stream().map(StepCurve::effect).toList(), expected.path("delta"), mean);
        }
    }

    private static void relative(List<Double> values, JsonNode expected, double tolerance) {
        List<Double> ratio = IntStream.range(0, values.size())
                .mapToObj(i -> values.get(i) / expected.path(i).asDouble())
                .toList();
        assertThat(ratio).hasSize(expected.size()).allSatisfy(r -> assertThat(r).isCloseTo(1, within(tolerance)));
    }

    /** With given parameters the spread must equal NUTS; with estimated ones NUTS is wider, as it should be. */
    @ParameterizedTest
    @EnumSource
    void curvesAgreeWithNuts(Set of) {
        Fitted s = of.fit();
        double shift = s.tolerance("vs_nuts_mean_in_sd");
        JsonNode nuts = s.set.expected().path("cross_check").path("trainees");
        for (int t = 0; t < nuts.size(); t++) {
            CompetencyCurve curve = s.curve(s.trainees().path(t));
            for (int i = 0; i < curve.points().size(); i++) {
                double sd = nuts.path(t).path("panel_sd").path(i).asDouble();
                double mean = nuts.path(t).path("panel_mean").path(i).asDouble();
                assertThat(curve.points().get(i).level()).isCloseTo(mean, within(shift * sd));
                double ratio = curve.points().get(i).sd() / sd;
                if (of == Set.GIVEN) {
                    assertThat(ratio).isCloseTo(1, within(s.tolerance("vs_nuts_sd_rel")));
                } else {
                    JsonNode range = s.set.expected().path("tolerances").path("vs_nuts_sd_ratio_of_1.12_times_engine");
                    assertThat(CompetencyModel.BAND_FACTOR * ratio)
                            .isBetween(range.path(0).asDouble(), range.path(1).asDouble());
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void theCaseByCaseUpdateEqualsTheReference(Set of) {
        Fitted s = of.fit();
        double tolerance = s.tolerance("filter_vs_own_filter_abs") + s.tolerance("mean_abs");
        for (JsonNode expected : s.trainees()) {
            List<RunningPoint> path = RunningPath.of(
                            s.fit, s.table, expected.path("trainee").asString())
                    .points();
            double tau = s.fit.psi().threshold(4);
            near(path.stream().map(p -> p.level() - tau).toList(), expected.path("filter_seq_mean"), tolerance);
            assertThat(path.get(path.size() - 1).sd())
                    .isCloseTo(
                            expected.path("filter_last_sd").asDouble(),
                            within(s.tolerance("filter_vs_own_filter_abs")));
        }
    }

    @ParameterizedTest
    @EnumSource
    void theNextCaseEqualsTheReference(Set of) {
        Fitted s = of.fit();
        double tolerance = s.tolerance("readiness_abs");
        for (JsonNode trainee : s.trainees()) {
            JsonNode expected = trainee.path("readiness_next_case");
            PlainNextCase next = PlainNextCase.of(
                    s.fit,
                    s.table,
                    RunningPath.of(s.fit, s.table, trainee.path("trainee").asString()),
                    s.critical(),
                    4);
            assertThat(next.chance()).isCloseTo(expected.path("p_all").asDouble(), within(tolerance));
            near(next.steps(), expected.path("p_step"), tolerance);
            assertThat(next.atLeast(0.5))
                    .isCloseTo(expected.path("assurance_p50").asDouble(), within(tolerance));
            assertThat(next.atLeast(0.2))
                    .isCloseTo(expected.path("assurance_p20").asDouble(), within(tolerance));
        }
    }
}
