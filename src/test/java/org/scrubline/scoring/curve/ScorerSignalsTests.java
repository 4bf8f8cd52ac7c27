package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The figures inside the signals on scorers, on one programme with one habit planted at a time. */
class ScorerSignalsTests {

    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));

    private static double[][] habits() {
        double[][] habits = SimulatedProgramme.supervisorHabits(new Random(3), 9);
        for (int v = 0; v < 9; v++) {
            habits[0][v] = 0.1 * (v % 3 - 1);
            habits[1][v] = 1;
            habits[2][v] = 0.45;
        }
        return habits;
    }

    private static List<ObservedScore> programme(double[][] habits) {
        return new SimulatedProgramme("", "t", 31, 12, 50, habits, 8).scores;
    }

    private static List<Flag> of(List<Flag> flags, Flag.Kind kind) {
        return flags.stream().filter(f -> f.kind() == kind).toList();
    }

    /**
     * The habit's own estimate is certain to 1/(2 n known²), and to .3² beforehand, where known is the share of a whole-
     * assessment effect that its scores tell: with about 19 scores of .25 weight each and a variance of 1.7 at most
     * 1 - 1 / (1 + 1.7 x 4.75) = .88, less what the level leaves open.
     */
    @Test
    void oneOverallImpressionIsNoticedWithItsCertainty() {
        double[][] habits = habits();
        habits[2][4] = 1.3;
        ScoreTable table = ScoreTable.of(5, List.of(), programme(habits));
        PopulationFit fit = MODEL.fit(table);
        List<Flag> named = of(ScorerSignals.of(fit, table), Flag.Kind.ONE_OVERALL_IMPRESSION);
        assertThat(named).extracting(Flag::subject).contains("v4").hasSizeLessThanOrEqualTo(2);
        Flag flag =
                named.stream().filter(f -> f.subject().equals("v4")).findFirst().orElseThrow();
        double z = flag.value() / (fit.psi().halo().get(fit.supervisors().indexOf("v4")) - 0.25);
        long forms = programme(habits).stream()
                .filter(s -> s.supervisor().equals("v4"))
                .map(ObservedScore::assessment)
                .distinct()
                .count();
        double known = Math.sqrt((z * z - 1 / 0.09) / (2 * forms));
        assertThat(known).isBetween(0.65, 0.88);
    }

    /** Half of v4's levels pulled to the form's middle one: the steps then vary less than their own effects explain. */
    @Test
    void scoresFlatterThanTheStepsExplainAreNoticedAndNobodyElses() {
        List<ObservedScore> scores = programme(habits());
        Random random = new Random(5);
        List<ObservedScore> flat = scores.stream()
                .map(s -> s.supervisor().equals("v4") && random.nextBoolean()
                        ? new ObservedScore(
                                s.assessment(), s.trainee(), s.supervisor(), s.context(), s.step(), middle(scores, s))
                        : s)
                .toList();
        ScoreTable table = ScoreTable.of(5, List.of(), flat);
        List<Flag> named = of(ScorerSignals.of(MODEL.fit(table), table), Flag.Kind.FLATTER_THAN_EXPECTED);
        assertThat(named).extracting(Flag::subject).containsExactly("v4");
        assertThat(named.get(0).value()).isBetween(0.6, 0.89);
    }

    private static int middle(List<ObservedScore> scores, ObservedScore of) {
        List<Integer> levels = scores.stream()
                .filter(s -> s.assessment().equals(of.assessment()))
                .map(ObservedScore::lowest)
                .sorted()
                .toList();
        return levels.get(levels.size() / 2);
    }

    @Test
    void aDifferenceIsTheSeverityAgainstThePanelsMean() {
        double[][] habits = habits();
        habits[0][4] = -1.5;
        ScoreTable table = ScoreTable.of(5, List.of(), programme(habits));
        PopulationFit fit = MODEL.fit(table);
        List<Flag> named = of(ScorerSignals.of(fit, table), Flag.Kind.SCORES_DIFFER);
        assertThat(named).extracting(Flag::subject).containsExactly("v4");
        double mean = fit.severities().stream()
                .mapToDouble(PopulationFit.Severity::mean)
                .average()
                .orElseThrow();
        double own = fit.severity("v4").orElseThrow().mean();
        assertThat(named.get(0).value()).isCloseTo(own - mean, within(1e-9)).isBetween(-2.0, -1.0);
        assertThat(named.get(0).sentence()).contains("higher than colleagues");
    }

    /** Eight forms in each half are needed; the supervisor's later forms are one level lower throughout. */
    @Test
    void aShiftNeedsEightFormsInEachHalfAndHasTheSizeOfTheChange() {
        assertThat(shifts(8)).singleElement().satisfies(flag -> {
            assertThat(flag.subject()).isEqualTo("w");
            assertThat(flag.value()).isBetween(0.8, 3.0);
            assertThat(flag.sentence()).contains("lower in the later half");
        });
        assertThat(shifts(7)).isEmpty();
    }

    private static List<Flag> shifts(int half) {
        List<ObservedScore> scores = new ArrayList<>();
        for (ObservedScore s : programme(habits())) {
            boolean taken = s.trainee().equals("t0")
                    && s.context().order() >= 10
                    && s.context().order() < 10 + 2 * half;
            boolean later = s.context().order() >= 10 + half;
            scores.add(new ObservedScore(
                    s.assessment(),
                    s.trainee(),
                    taken ? "w" : s.supervisor(),
                    s.context(),
                    s.step(),
                    taken && later ? Math.max(1, s.lowest() - 1) : s.lowest()));
        }
        ScoreTable table = ScoreTable.of(5, List.of(), scores);
        PopulationFit fit = MODEL.fit(table, Psi.shipped(5, table.steps().size(), 3), Estimation.GIVEN);
        return ScorerSignals.shifts(fit, table).stream()
                .filter(f -> f.subject().equals("w"))
                .toList();
    }
}
