package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Planted signals are found and quiet programmes stay mostly quiet; seeds were fixed before the limits were met. */
class SignalsTests {

    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));
    private static final int PROGRAMMES = 4;

    private static SimulatedProgramme programme(int seed, double[] severity) {
        double[][] habits = SimulatedProgramme.supervisorHabits(new Random(seed), 9);
        for (int v = 0; v < 9; v++) {
            habits[0][v] = severity[v];
            habits[1][v] = 1;
            habits[2][v] = 0.45;
        }
        return new SimulatedProgramme("", "t", 700 + seed, 12, 50, habits, seed);
    }

    private static List<Flag> signals(PopulationFit fit, ScoreTable table, String trainee) {
        CompetencyCurve curve = CompetencyModel.smooth(fit, table, trainee, STANDARD);
        return TraineeSignals.of(table, curve, RunningPath.of(fit, table, trainee));
    }

    private static List<String> subjects(List<Flag> flags, Flag.Kind kind) {
        return flags.stream().filter(f -> f.kind() == kind).map(Flag::subject).toList();
    }

    @Test
    void aSupervisorWhoScoresMuchLowerIsNoticed() {
        int found = 0;
        int others = 0;
        for (int seed = 0; seed < PROGRAMMES; seed++) {
            ScoreTable table = programme(seed, new double[] {1.5, 0.1, -0.2, 0, 0.2, -0.1, 0, 0.1, -0.1})
                    .table();
            List<String> named = subjects(ScorerSignals.of(MODEL.fit(table), table), Flag.Kind.SCORES_DIFFER);
            found += named.contains("v0") ? 1 : 0;
            others += named.size() - (named.contains("v0") ? 1 : 0);
        }
        assertThat(found).isEqualTo(PROGRAMMES);
        assertThat(others).isLessThanOrEqualTo(2);
    }

    @Test
    void oneLevelForAllIsNoticed() {
        int found = 0;
        int others = 0;
        for (int seed = 0; seed < PROGRAMMES; seed++) {
            SimulatedProgramme p = programme(seed, new double[9]);
            ScoreTable table = ScoreTable.of(5, List.of(), flattened(p.scores, seed));
            List<String> named = subjects(ScorerSignals.of(MODEL.fit(table), table), Flag.Kind.ONE_LEVEL_FOR_ALL);
            found += named.contains("v0") ? 1 : 0;
            others += named.size() - (named.contains("v0") ? 1 : 0);
        }
        assertThat(found).isEqualTo(PROGRAMMES);
        assertThat(others).isZero();
    }

    /** Supervisor v0 gives the middle level of the form to all its steps in six of ten forms. */
    private static List<ObservedScore> flattened(List<ObservedScore> scores, int seed) {
        Random random = new Random(seed);
        Map<String, List<ObservedScore>> forms =
                scores.stream().collect(Collectors.groupingBy(ObservedScore::assessment));
        Map<String, Integer> one = forms.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .filter(e -> e.getValue().get(0).supervisor().equals("v0") && random.nextDouble() < 0.6)
                .collect(Collectors.toMap(
                        Map.Entry::getKey,
                        e -> e.getValue().stream()
                                .map(ObservedScore::lowest)
                                .sorted()
                                .toList()
                                .get(e.getValue().size() / 2)));
        return scores.stream()
                .map(s -> new ObservedScore(
                        s.assessment(),
                        s.trainee(),
                        s.supervisor(),
                        s.context(),
                        s.step(),
                        one.getOrDefault(s.assessment(), s.lowest())))
                .toList();
    }

    @Test
    void aSupervisorWhoChangesIsNoticed() {
        int found = 0;
        int others = 0;
        for (int seed = 0; seed < PROGRAMMES; seed++) {
            SimulatedProgramme p = programme(seed, new double[9]);
            List<ObservedScore> changed = new ArrayList<>();
            for (ObservedScore s : p.scores) {
                boolean later = s.supervisor().equals("v0") && s.context().order() >= 25;
                changed.add(new ObservedScore(
                        s.assessment(),
                        s.trainee(),
                        s.supervisor(),
                        s.context(),
                        s.step(),
                        later ? Math.max(1, s.lowest() - 1) : s.lowest()));
            }
            ScoreTable table = ScoreTable.of(5, List.of(), changed);
            List<String> named = subjects(ScorerSignals.shifts(MODEL.fit(table), table), Flag.Kind.SCORING_SHIFTED);
            found += named.contains("v0") ? 1 : 0;
            others += named.size() - (named.contains("v0") ? 1 : 0);
        }
        assertThat(found).isEqualTo(PROGRAMMES);
        assertThat(others).isLessThanOrEqualTo(3);
    }

    @Test
    void aSuddenFallIsNoticed() {
        SimulatedProgramme p = programme(1, new double[9]);
        List<ObservedScore> fallen = p.scores.stream()
                .map(s -> new ObservedScore(
                        s.assessment(),
                        s.trainee(),
                        s.supervisor(),
                        s.context(),
                        s.step(),
                        s.trainee().equals("t0") && s.context().order() >= 20
                                ? Math.max(1, s.lowest() - 2)
                                : s.lowest()))
                .toList();
        ScoreTable before = p.table();
        ScoreTable after = ScoreTable.of(5, List.of(), fallen);
        PopulationFit fit = MODEL.fit(before);
        List<Flag> flags = signals(fit, after, "t0");
        assertThat(flags).extracting(Flag::kind).contains(Flag.Kind.BELOW_EXPECTATION, Flag.Kind.DROP);
        assertThat(flags.get(0).where()).isIn("c19", "c20", "c21");
    }

    /** One false signal in 200 to 400 cases was measured on larger simulations; leave and real dips are among them. */
    @Test
    void quietProgrammesStayMostlyQuiet() {
        int alarms = 0;
        int cases = 0;
        for (int seed = 0; seed < PROGRAMMES; seed++) {
            ScoreTable table = programme(seed, new double[9]).table();
            PopulationFit fit = MODEL.fit(table);
            for (String t : table.trainees()) {
                CompetencyCurve curve = CompetencyModel.smooth(fit, table, t, STANDARD);
                cases += curve.points().size();
                alarms +=
                        signals(fit, table, t).stream().anyMatch(f -> f.kind() == Flag.Kind.BELOW_EXPECTATION) ? 1 : 0;
            }
        }
        assertThat(100.0 * alarms / cases).isLessThan(0.7);
    }

    @Test
    void aStepSeldomSeenIsCounted() {
        SimulatedProgramme p = programme(2, new double[9]);
        String trainee = "t0";
        List<ObservedScore> fewer = p.scores.stream()
                .filter(s -> !s.trainee().equals(trainee)
                        || !s.step().equals("S11")
                        || s.context().order() < 2)
                .toList();
        ScoreTable table = ScoreTable.of(5, List.of(), fewer);
        PopulationFit fit = MODEL.fit(table);
        List<Flag> flags = signals(fit, table, trainee);
        assertThat(subjects(flags, Flag.Kind.STEP_SELDOM_SEEN)).containsExactly("S11");
    }

    @Test
    void everySentenceSpeaksPlainly() {
        for (Flag.Kind kind : Flag.Kind.values()) {
            String sentence = new Flag(kind, "X", 1.2, 1, "c3").sentence();
            assertThat(sentence).endsWith(".").doesNotContainIgnoringCase("hawk", "dove", "halo", "fail", "competent");
            assertThat(kind.falseAlarms()).isNotBlank();
        }
    }

    /** The case-by-case update against the full smoothing of the same scores: .2 sd apart on average was measured. */
    @Test
    void theRunningEstimateStaysCloseToTheCurve() {
        ScoreTable table = programme(3, new double[9]).table();
        PopulationFit fit = MODEL.fit(table);
        double sum = 0;
        for (String t : table.trainees()) {
            CurvePoint last = CompetencyModel.smooth(fit, table, t, STANDARD)
                    .points()
                    .get(table.caseStart[table.trainees().indexOf(t) + 1]
                            - table.caseStart[table.trainees().indexOf(t)]
                            - 1);
            List<RunningPoint> path = RunningPath.of(fit, table, t).points();
            double running = path.get(path.size() - 1).level() - fit.psi().threshold(4);
            sum += Math.abs(running - last.plainLevel()) / last.plainSd();
        }
        assertThat(sum / table.trainees().size()).isLessThan(0.5);
    }

    @Test
    void extendingAHistoryEqualsRunningItWhole() {
        SimulatedProgramme p = programme(0, new double[9]);
        ScoreTable whole = p.table();
        PopulationFit fit = MODEL.fit(whole);
        for (String t : List.of("t0", "t5")) {
            RunningPath path = RunningPath.of(fit, until(p, whole, t, 0), t);
            assertThat(path.points()).isEmpty();
            for (int cases = 1; cases <= 12; cases++) {
                path.extend(until(p, whole, t, cases));
            }
            List<RunningPoint> all =
                    RunningPath.of(fit, until(p, whole, t, 12), t).points();
            assertThat(path.points()).hasSameSizeAs(all);
            for (int i = 0; i < all.size(); i++) {
                assertThat(path.points().get(i).level()).isCloseTo(all.get(i).level(), within(1e-9));
                assertThat(path.points().get(i).sd()).isCloseTo(all.get(i).sd(), within(1e-9));
            }
            ScoreTable withoutFirst = ScoreTable.of(
                    5,
                    whole.steps(),
                    p.scores.stream().filter(s -> s.context().order() > 0).toList());
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> path.extend(withoutFirst))
                    .withMessageContaining("run it anew");
        }
    }

    private static ScoreTable until(SimulatedProgramme p, ScoreTable whole, String trainee, int cases) {
        return ScoreTable.of(
                5,
                whole.steps(),
                p.scores.stream()
                        .filter(s -> s.trainee().equals(trainee) && s.context().order() < cases)
                        .toList());
    }
}
