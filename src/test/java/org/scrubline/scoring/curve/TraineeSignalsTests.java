package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits of every signal on one trainee, with histories written by hand: just before and just at the limit. */
class TraineeSignalsTests {

    private static final Evidence ENOUGH = new Evidence(0.9, Evidence.Strength.REPORTABLE, 20, 5, 0.3, List.of());

    /** A history of innovations at an unchanging level. */
    private static List<RunningPoint> innovations(double... values) {
        return IntStream.range(0, values.length)
                .mapToObj(i -> new RunningPoint("a" + i, "c" + i, 0, 0.2, values[i]))
                .toList();
    }

    /** A history of levels without surprise. */
    private static List<RunningPoint> levels(double sd, double... values) {
        return IntStream.range(0, values.length)
                .mapToObj(i -> new RunningPoint("a" + i, "c" + i, values[i], sd, 0))
                .toList();
    }

    /** Cases of trainee t; step A is seen in all of them, B in the first so many, C never. */
    private static ScoreTable table(int cases, int withB) {
        List<ObservedScore> scores = new ArrayList<>();
        for (int i = 0; i < cases; i++) {
            CaseContext context = new CaseContext("c" + i, i, i, 0, List.of());
            scores.add(new ObservedScore("a" + i, "t", "v", context, "A", 3));
            if (i < withB) {
                scores.add(new ObservedScore("a" + i, "t", "v", context, "B", 3));
            }
            scores.add(new ObservedScore("o" + i, "other", "v", context, "C", 3));
        }
        return ScoreTable.of(5, List.of("A", "B", "C"), scores);
    }

    private static CompetencyCurve curve(int cases, Readiness... readiness) {
        List<CurvePoint> points = Collections.nCopies(cases, new CurvePoint("c", 0, 0, 0, 0, 0.3, -0.5, 0.5, 0, 0.3));
        StepCurve.Chance prior = new StepCurve.Chance(0, -1, 1);
        return new CompetencyCurve("t", "1", 0, 0, points, prior, List.of(), ENOUGH, Arrays.asList(readiness));
    }

    private static Readiness far(String code, boolean shown, double within60) {
        Forecast forecast = new Forecast(shown, 90, 101, 101, 0, 0, within60);
        return new Readiness(new LevelStandard(code, 4, 0.5), 0.1, 0, 0.2, 0, List.of(), Support.NOT_YET, forecast);
    }

    private static List<Flag> of(List<RunningPoint> path) {
        return TraineeSignals.of(table(3, 3), curve(3), path);
    }

    /** The sum gains -z - .5 a case and stays at 0 or above: three cases of z = -1.9 make 4.2, above the limit of 4. */
    @Test
    void threeScoresFarBelowExpectationAreNamedFromTheFirst() {
        List<Flag> flags = of(innovations(0.3, -1.9, -1.9, -1.9));
        assertThat(flags).singleElement().satisfies(flag -> {
            assertThat(flag.kind()).isEqualTo(Flag.Kind.BELOW_EXPECTATION);
            assertThat(flag.value()).isCloseTo(4.2, within(1e-12));
            assertThat(flag.limit()).isEqualTo(4);
            assertThat(flag.where()).isEqualTo("c1");
            assertThat(flag.sentence()).startsWith("Since about case c1 scores lie below");
        });
    }

    @Test
    void theSumMustPassItsLimit() {
        assertThat(of(innovations(-2.5, -2.5))).isEmpty();
        assertThat(of(innovations(-2.5, -2.5, -0.75)))
                .extracting(Flag::kind)
                .containsExactly(Flag.Kind.BELOW_EXPECTATION);
    }

    /** 3.5 - 3.6 falls to 0, so the count starts again and is named from there. */
    @Test
    void scoresAboveExpectationEmptyTheSum() {
        assertThat(of(innovations(-2, -2.5, 3.1, -2, -2, -2))).singleElement().satisfies(flag -> {
            assertThat(flag.where()).isEqualTo("c3");
            assertThat(flag.value()).isCloseTo(4.5, within(1e-12));
        });
        assertThat(of(innovations(5, -2, -2, -1.4))).isEmpty();
        assertThat(of(innovations(-1.9, 0, -1.9, 0, -1.9, 0, -1.9)))
                .singleElement()
                .satisfies(flag -> assertThat(flag.value()).isCloseTo(4.1, within(1e-12)));
    }

    /** Only the first passing is named. */
    @Test
    void aLongSpellIsOneSignal() {
        assertThat(of(innovations(-5, -5, -5, -5))).singleElement().satisfies(flag -> {
            assertThat(flag.value()).isCloseTo(4.5, within(1e-12));
            assertThat(flag.where()).isEqualTo("c0");
        });
    }

    @ParameterizedTest
    @CsvSource({".31, .2, true", ".29, .2, false", ".31, .32, false", ".50, .49, true", ".50, .5, false"})
    void aDropMustPassThreeTenthsAndItsOwnSpread(double fall, double sd, boolean named) {
        List<Flag> flags = of(levels(sd, 1, 1, 1, 1 - fall));
        assertThat(flags).hasSize(named ? 1 : 0);
        if (named) {
            assertThat(flags.get(0).kind()).isEqualTo(Flag.Kind.DROP);
            assertThat(flags.get(0).value()).isCloseTo(fall, within(1e-12));
            assertThat(flags.get(0).limit()).isEqualTo(0.3);
            assertThat(flags.get(0).where()).isEqualTo("c3");
        }
    }

    /** Compared are levels three to fifteen cases earlier; nearer ones and older ones do not count. */
    @Test
    void aDropIsMeasuredFromTheBestOfTheCasesBefore() {
        assertThat(of(levels(0.1, 0, 0, 2, 0, 0))).isEmpty();
        assertThat(of(levels(0.1, 0, 0, 2, 0, 0, 0))).singleElement().satisfies(flag -> {
            assertThat(flag.where()).isEqualTo("c5");
            assertThat(flag.value()).isCloseTo(2, within(1e-12));
        });
        double[] fifteen = new double[16];
        fifteen[0] = 1;
        Arrays.fill(fifteen, 1, 15, 0.8);
        fifteen[15] = 0.6;
        assertThat(of(levels(0.1, fifteen)))
                .singleElement()
                .satisfies(flag -> assertThat(flag.value()).isCloseTo(0.4, within(1e-12)));
        double[] sixteen = new double[17];
        System.arraycopy(fifteen, 0, sixteen, 0, 15);
        sixteen[15] = 0.8;
        sixteen[16] = 0.6;
        assertThat(of(levels(0.1, sixteen))).isEmpty();
    }

    @Test
    void onlyTheFirstDropIsNamed() {
        assertThat(of(levels(0.1, 2, 2, 2, 1, 0)))
                .singleElement()
                .satisfies(flag -> assertThat(flag.where()).isEqualTo("c3"));
    }

    @ParameterizedTest
    @CsvSource({"10, true, .049, true", "10, true, .05, false", "9, true, .049, false", "10, false, .049, false"})
    void aStandardIsFarFromTenCasesOnWhenTheForecastShowsIt(int cases, boolean shown, double within60, boolean named) {
        List<Flag> flags = TraineeSignals.of(
                table(3, 3), curve(cases, far("E4", shown, within60), far("E2", true, 0.5)), List.of());
        assertThat(flags).hasSize(named ? 1 : 0);
        if (named) {
            assertThat(flags.get(0)).isEqualTo(new Flag(Flag.Kind.STANDARD_FAR, "E4", within60, 0.05, ""));
        }
    }

    /** In the last twenty of 21 cases step B was seen in those after the first. */
    @Test
    void aStepSeenLessThanThreeTimesInTheLastTwentyCasesIsNamed() {
        assertThat(TraineeSignals.of(table(21, 3), curve(21), List.of()))
                .containsExactly(
                        new Flag(Flag.Kind.STEP_SELDOM_SEEN, "B", 2, 3, ""),
                        new Flag(Flag.Kind.STEP_SELDOM_SEEN, "C", 0, 3, ""));
        assertThat(TraineeSignals.of(table(21, 4), curve(21), List.of()))
                .extracting(Flag::subject)
                .containsExactly("C");
        assertThat(TraineeSignals.of(table(20, 2), curve(20), List.of()))
                .extracting(Flag::subject)
                .containsExactly("B", "C");
    }

    @Test
    void beforeTwentyCasesNoStepIsSeldom() {
        assertThat(TraineeSignals.of(table(19, 0), curve(19), List.of())).isEmpty();
    }

    @Test
    void aTraineeWithoutScoresHasNoSignals() {
        ScoreTable others = ScoreTable.of(
                5,
                List.of("A"),
                List.of(new ObservedScore("a", "other", "v", new CaseContext("c", 0, 0, 0, List.of()), "A", 3)));
        assertThat(TraineeSignals.of(others, curve(12, far("E4", true, 0)), innovations(-5, -5)))
                .isEmpty();
    }

    @Test
    void whenSeveralThingsHappenAllAreNamed() {
        List<RunningPoint> path = List.of(
                new RunningPoint("a0", "c0", 1, 0.2, 0),
                new RunningPoint("a1", "c1", 1, 0.2, -5),
                new RunningPoint("a2", "c2", 1, 0.2, 0),
                new RunningPoint("a3", "c3", 0, 0.2, 0));
        assertThat(TraineeSignals.of(table(20, 20), curve(20, far("E4", true, 0)), path))
                .extracting(Flag::kind)
                .containsExactly(
                        Flag.Kind.BELOW_EXPECTATION,
                        Flag.Kind.DROP,
                        Flag.Kind.STANDARD_FAR,
                        Flag.Kind.STEP_SELDOM_SEEN);
    }
}
