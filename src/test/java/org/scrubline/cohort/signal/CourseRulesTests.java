package org.scrubline.cohort.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.scrubline.scoring.curve.Flag;

class CourseRulesTests {

    private static final Instant START = Instant.parse("2026-01-05T12:00:00Z");
    private static final Duration GAP = Duration.ofDays(56);
    private static final Flag DROP = new Flag(Flag.Kind.DROP, "", 1, .3, "20");

    @Test
    void aLevelThatStaysLowOverTheLastThirdIsAPlateau() {
        assertThat(CourseRules.plateau(course(36, i -> Math.min(1, i / 12.0)))).isPresent();
    }

    @Test
    void aHighLevelThatStaysIsNone() {
        assertThat(CourseRules.plateau(course(36, i -> 2.5))).isEmpty();
    }

    @Test
    void aLowLevelThatStillRisesIsNone() {
        assertThat(CourseRules.plateau(course(36, i -> i / 12.0 - 2))).isEmpty();
    }

    @Test
    void belowThirtySixCasesNothingIsSaidOfAPlateau() {
        assertThat(CourseRules.plateau(course(35, i -> 0))).isEmpty();
    }

    @Test
    void aFallThatTheEngineNoticedTooIsARegression() {
        assertThat(CourseRules.regression(course(24, i -> i < 12 ? 1 : 0, DROP), GAP))
                .isPresent();
    }

    @Test
    void theEngineAloneOrTheCourseAloneIsNone() {
        assertThat(CourseRules.regression(course(24, i -> i < 12 ? 1 : 0), GAP)).isEmpty();
        assertThat(CourseRules.regression(course(24, i -> i < 12 ? 1 : .6, DROP), GAP))
                .isEmpty();
    }

    @Test
    void aBreakIsNoRegressionAndSaysWhetherTheLevelIsBack() {
        TraineeFacts facts = withBreak(course(24, i -> i < 12 ? 1 : 0, DROP));
        assertThat(CourseRules.regression(facts, GAP)).isEmpty();
        assertThat(CourseRules.longBreak(facts, GAP)).hasValueSatisfying(signal -> {
            assertThat(signal.figures().subList(0, 2)).containsExactly(101.0, 12.0);
            assertThat(CourseRules.recovered(signal)).isFalse();
        });
        assertThat(CourseRules.longBreak(withBreak(course(24, i -> i / 12.0)), GAP))
                .hasValueSatisfying(
                        signal -> assertThat(CourseRules.recovered(signal)).isTrue());
    }

    @Test
    void aCaseEveryDayIsNoBreak() {
        assertThat(CourseRules.longBreak(course(24, i -> 0), GAP)).isEmpty();
    }

    @Test
    void twoStepsFarBehindTheOthersAreNamedWithTheirLowSheets() {
        assertThat(CourseRules.stepsBehind(steps(-.5, -.4, 0, .1))).hasValueSatisfying(signal -> {
            assertThat(signal.steps()).containsExactly("S0", "S1");
            assertThat(signal.forms()).containsExactly("1");
        });
    }

    @Test
    void stepsALittleBehindOrSeldomSeenAreLeftAlone() {
        assertThat(CourseRules.stepsBehind(steps(-.3, -.2, 0, .1))).isEmpty();
        TraineeFacts seldom = steps(-.5, -.4, 0, .1);
        List<TraineeFacts.OwnStep> few = seldom.steps().stream()
                .map(step -> new TraineeFacts.OwnStep(step.code(), 7, step.effect(), step.sd()))
                .toList();
        assertThat(CourseRules.stepsBehind(facts(seldom.forms(), List.of(), few, List.of())))
                .isEmpty();
    }

    private static TraineeFacts steps(double... effects) {
        List<SignedForm> forms = List.of(form("1", 0, 3), form("2", 1, 4));
        List<TraineeFacts.OwnStep> steps = IntStream.range(0, effects.length)
                .mapToObj(i -> new TraineeFacts.OwnStep("S" + i, 8, effects[i], .25))
                .toList();
        return facts(forms, List.of(), steps, List.of());
    }

    private static TraineeFacts course(int cases, IntToDoubleFunction level, Flag... flags) {
        List<SignedForm> forms = IntStream.range(0, cases)
                .mapToObj(i -> form(Integer.toString(i), i, 4))
                .toList();
        List<TraineeFacts.Point> points = IntStream.range(0, cases)
                .mapToObj(i -> new TraineeFacts.Point(day(i), level.applyAsDouble(i)))
                .toList();
        return facts(forms, points, List.of(), List.of(flags));
    }

    /** The second half of the cases a hundred days later. */
    private static TraineeFacts withBreak(TraineeFacts facts) {
        int half = facts.course().size() / 2;
        List<TraineeFacts.Point> later = IntStream.range(0, facts.course().size())
                .mapToObj(i -> new TraineeFacts.Point(
                        day(i < half ? i : i + 100), facts.course().get(i).level()))
                .toList();
        return facts(facts.forms(), later, List.of(), facts.flags());
    }

    private static TraineeFacts facts(
            List<SignedForm> forms,
            List<TraineeFacts.Point> course,
            List<TraineeFacts.OwnStep> steps,
            List<Flag> flags) {
        List<Instant> ended = course.stream().map(TraineeFacts.Point::endedAt).toList();
        return new TraineeFacts("T", forms, course, steps, flags, ended, 0);
    }

    private static SignedForm form(String id, int day, int level) {
        return AForm.of(id).day(day).level("S0", level).build();
    }

    private static Instant day(int day) {
        return START.plus(Duration.ofDays(day));
    }
}
