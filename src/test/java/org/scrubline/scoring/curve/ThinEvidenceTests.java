package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What little or odd evidence does to a curve at the shipped parameters, and the sentence that goes with it. */
class ThinEvidenceTests {

    private static final List<String> STEPS =
            IntStream.range(0, 22).mapToObj(i -> String.format("S%02d", i)).toList();
    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(List.of("S04", "S07"));
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));

    private final List<ObservedScore> scores = new ArrayList<>();

    private void record(String trainee, String supervisor, int cases, IntBinaryOperator level) {
        for (int i = 0; i < cases; i++) {
            CaseContext context = new CaseContext("c" + i, i, i, 0, List.of(0.0, 0.0, 0.0));
            for (int s = 0; s < STEPS.size(); s++) {
                scores.add(new ObservedScore(
                        trainee + supervisor + i, trainee, supervisor, context, STEPS.get(s), level.applyAsInt(i, s)));
            }
        }
    }

    private PopulationFit fit() {
        return MODEL.fit(table(), Psi.shipped(5, 22, 3), Estimation.GIVEN);
    }

    private ScoreTable table() {
        return ScoreTable.of(5, STEPS, scores);
    }

    private CompetencyCurve curve(String trainee) {
        return CompetencyModel.smooth(fit(), table(), trainee, STANDARD);
    }

    private static List<Evidence.Kind> missing(CompetencyCurve curve) {
        return curve.evidence().reasons().stream().map(Evidence.Reason::kind).toList();
    }

    @Test
    void withoutScoresTheCurveIsThePopulation() {
        CompetencyCurve curve = curve("nobody");
        assertThat(curve.points()).isEmpty();
        assertThat(curve.prior().chance()).isCloseTo(-0.98, within(0.01));
        assertThat((curve.prior().high() - curve.prior().chance()) / 1.645).isCloseTo(0.67, within(0.01));
        assertThat(curve.evidence().statement())
                .contains("No assessments yet", "Too few cases or scorers to conclude.");
        assertThat(curve.readiness())
                .allMatch(r ->
                        r.support() == Support.INSUFFICIENT && !r.forecast().shown());
    }

    /**
     * With one assessment of equal steps every effect at the mode is its variance times the sum of residuals, so the
     * common location solves one equation in one unknown; bisection gives it without any of the engine.
     */
    @Test
    void oneCaseOfTopLevelsIsSharedByVariancesAndIsNotEnoughEvidence() {
        record("t", "v", 1, (i, s) -> 5);
        CompetencyCurve curve = curve("t");
        Psi psi = Psi.shipped(5, 22, 3);
        double own = psi.levelSd() * psi.levelSd() + psi.walk();
        double severity = psi.severitySd() * psi.severitySd();
        double shared = own + severity + psi.assessmentSd() * psi.assessmentSd() + psi.pairSd() * psi.pairSd();
        double step = psi.stepSd() * psi.stepSd();
        double low = 0;
        double high = 10;
        for (int k = 0; k < 60; k++) {
            double l = (low + high) / 2;
            double residual = 1 / (1 + Math.exp(l - psi.threshold(5)));
            if ((22 * shared + step) * residual > l) {
                low = l;
            } else {
                high = l;
            }
        }
        double residual = 1 / (1 + Math.exp(low - psi.threshold(5)));
        assertThat(curve.points().get(0).plainLevel() + psi.threshold(4))
                .isCloseTo(22 * own * residual + step * residual, within(1e-6));
        assertThat(fit().severities().get(0).mean()).isCloseTo(-22 * severity * residual, within(1e-6));
        assertThat(curve.evidence().strength()).isEqualTo(Evidence.Strength.NOT_ENOUGH);
        assertThat(curve.evidence().shown()).isFalse();
        assertThat(missing(curve)).contains(Evidence.Kind.FEW_CASES, Evidence.Kind.FEW_SCORERS);
    }

    @Test
    void topLevelsOnlyStayFiniteAndAreSaidToTellNothing() {
        for (int t = 0; t < 3; t++) {
            record("t" + t, "v" + t % 2, 10, (i, s) -> 5);
        }
        for (int t = 0; t < 3; t++) {
            CompetencyCurve curve = curve("t" + t);
            assertThat(curve.points().get(9).plainLevel()).isBetween(1.5, 4.0);
            assertThat(missing(curve)).contains(Evidence.Kind.TOP_SCORES_ONLY);
            assertThat(curve.evidence().statement()).contains("gives only the highest level");
        }
        assertThat(fit().severities()).allSatisfy(s -> assertThat(s.mean()).isBetween(-4.5, -1.5));
    }

    @Test
    void bottomLevelsOnlyAreTheMirror() {
        record("t0", "v0", 10, (i, s) -> 1);
        record("t1", "v0", 10, (i, s) -> 1);
        CompetencyCurve curve = curve("t0");
        assertThat(curve.points().get(9).plainLevel()).isBetween(-4.0, -1.0);
        assertThat(missing(curve)).contains(Evidence.Kind.BOTTOM_SCORES_ONLY);
    }

    @Test
    void groupsThatShareNobodyAreNamed() {
        record("t0", "v0", 12, (i, s) -> 3 + (i + s) % 2);
        record("t1", "v1", 12, (i, s) -> 3 + (i + s) % 2);
        assertThat(fit().groups()).hasSize(2);
        CompetencyCurve apart = curve("t0");
        assertThat(missing(apart)).contains(Evidence.Kind.NOT_CONNECTED);
        assertThat(apart.evidence().statement()).contains("rests on the programme's average only");
        record("t0", "v1", 4, (i, s) -> 3 + (i + s) % 2);
        CompetencyCurve joined = curve("t0");
        assertThat(fit().groups()).hasSize(1);
        assertThat(missing(joined)).doesNotContain(Evidence.Kind.NOT_CONNECTED);
        assertThat(joined.points().get(11).sd())
                .isLessThan(apart.points().get(11).sd());
    }

    @Test
    void oneSupervisorOnlyLeavesTheSupervisorsUncertainty() {
        record("t0", "v0", 40, (i, s) -> 3 + (i + s) % 2);
        record("t1", "v1", 40, (i, s) -> 3 + (i + s) % 2);
        CompetencyCurve curve = curve("t0");
        assertThat(curve.points().get(39).plainSd()).isGreaterThan(0.3);
        assertThat(missing(curve)).contains(Evidence.Kind.FEW_SCORERS);
        assertThat(curve.evidence().statement()).contains("1 scorer(s); 2 are needed");
    }

    @Test
    void eachMinimumIsNamedAndNothingElse() {
        for (int v = 0; v < 4; v++) {
            record("t", "v" + v, 13, (i, s) -> 2 + (i + s) % 3);
            record("other", "v" + v, 13, (i, s) -> 2 + (i * s) % 3);
        }
        assertThat(missing(curve("t"))).isEmpty();
        assertThat(curve("t").evidence().mayDecide()).isTrue();
        scores.removeIf(s -> s.trainee().equals("t") && s.context().order() >= 6);
        assertThat(missing(curve("t"))).containsExactly(Evidence.Kind.FEW_CASES_FOR_DECISION);
        assertThat(curve("t").evidence().shown()).isTrue();
        scores.removeIf(s -> s.trainee().equals("t") && s.supervisor().equals("v3"));
        assertThat(missing(curve("t")))
                .containsExactly(Evidence.Kind.FEW_CASES_FOR_DECISION, Evidence.Kind.FEW_SCORERS_FOR_DECISION);
        scores.removeIf(s -> s.trainee().equals("t")
                && s.supervisor().equals("v2")
                && s.context().order() < 5);
        assertThat(missing(curve("t"))).contains(Evidence.Kind.ONE_SCORER_DOMINATES);
        scores.removeIf(s ->
                s.trainee().equals("t") && s.step().equals("S07") && s.context().order() > 0);
        assertThat(curve("t").evidence().statement()).contains("Critical step S07 was seen 2 times; 3 are needed.");
        assertThat(curve("t").evidence().shown()).isFalse();
    }

    @Test
    void pendingAssessmentsMoveTheCurveButCountTowardNothing() {
        for (int v = 0; v < 4; v++) {
            record("t", "v" + v, 13, (i, s) -> 2 + (i + s) % 3);
        }
        CompetencyCurve all = curve("t");
        Set<String> pending = Set.of("tv00", "tv01");
        CompetencyCurve some = CompetencyModel.smooth(fit(), table(), "t", STANDARD.withPending(pending));
        assertThat(some.points()).isEqualTo(all.points());
        assertThat(all.evidence().cases()).isEqualTo(13);
        ScoreTable table = table();
        Set<String> third = new HashSet<>();
        IntStream.range(0, 13).forEach(i -> third.add("tv3" + i));
        CompetencyCurve without = CompetencyModel.smooth(fit(), table, "t", STANDARD.withPending(third));
        assertThat(without.evidence().scorers()).isEqualTo(3);
        assertThat(missing(without)).containsExactly(Evidence.Kind.FEW_SCORERS_FOR_DECISION);
    }

    @Test
    void aLongAbsenceIsFiniteAndWidensTheBand() {
        record("t", "v0", 10, (i, s) -> 4);
        double before = curve("t").points().get(9).sd();
        List<ObservedScore> early = List.copyOf(scores);
        scores.clear();
        early.forEach(s -> scores.add(
                s.context().order() < 9
                        ? s
                        : new ObservedScore(
                                s.assessment(),
                                s.trainee(),
                                s.supervisor(),
                                new CaseContext("c9", 9, 9, 8, List.of(0.0, 0.0, 0.0)),
                                s.step(),
                                s.lowest())));
        assertThat(curve("t").points().get(9).sd()).isFinite().isGreaterThan(before);
    }

    @Test
    void smallProgrammesKeepTheShippedThresholdsAndVariances() {
        for (int t = 0; t < 5; t++) {
            record("t" + t, "v" + t % 3, 10, (i, s) -> 1 + (i * 7 + s * 3) % 5);
        }
        Psi shipped = Psi.shipped(5, 22, 3);
        assertThat(Estimation.allowedFor(table())).isEqualTo(Estimation.DIFFICULTY);
        Psi psi = MODEL.fit(table()).psi();
        assertThat(psi.threshold(4)).isCloseTo(shipped.threshold(4), within(1e-12));
        assertThat(psi.threshold(2)).isEqualTo(shipped.threshold(2));
        assertThat(psi.levelSd()).isCloseTo(shipped.levelSd(), within(1e-12));
        assertThat(psi.difficulty()).isNotEqualTo(shipped.difficulty());
        assertThat(psi.difficulty().stream().mapToDouble(b -> b).sum()).isCloseTo(0, within(1e-9));
        assertThat(Estimation.allowedFor(new SimulatedProgramme("", 1, 7, 4, 60).table()))
                .isEqualTo(Estimation.ALL);
    }

    @Test
    void aStepTheFitDoesNotKnowIsTreatedAsAverage() {
        record("t", "v0", 6, (i, s) -> 3 + (i + s) % 2);
        PopulationFit fit = fit();
        ScoreTable table = table();
        List<ObservedScore> more = new ArrayList<>(scores);
        more.add(new ObservedScore("tv00", "t", "v0", scores.get(0).context(), "NEW", 3));
        CompetencyCurve curve = CompetencyModel.smooth(fit, ScoreTable.of(5, List.of(), more), "t", STANDARD);
        assertThat(curve.steps())
                .hasSize(23)
                .allSatisfy(s -> assertThat(s.effectSd()).isPositive());
        assertThat(curve.points())
                .hasSameSizeAs(CompetencyModel.smooth(fit, table, "t", STANDARD).points());
    }
}
