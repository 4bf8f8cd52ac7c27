package org.scrubline.outcome;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.outcome.SuccessSet.Ground;
import org.scrubline.outcome.SuccessSet.Result;

/**
 * Each definition at its limits. Upper limits and falls: a world glaucoma association's book of 2008, from memory; the lower
 * limit of 6 mmHg: a trial that counts 5 mmHg or less on two visits after month 3, read as an abstract.
 */
class SuccessSetTests {

    private static final int LOWEST = 6;

    @ParameterizedTest(name = "{0}: before {1}, then {2} and {3} is {4}")
    @CsvSource({
        "UP_TO_21, 30, 21, 21, WITHOUT_DROPS",
        "UP_TO_21, 30, 21.5, 21.5, OUTSIDE",
        "UP_TO_21, 25, 20, 20, WITHOUT_DROPS",
        "UP_TO_21, 25, 20.5, 20.5, OUTSIDE",
        "UP_TO_18, 30, 18, 18, WITHOUT_DROPS",
        "UP_TO_18, 30, 18.5, 18.5, OUTSIDE",
        "UP_TO_18, 20, 16, 16, WITHOUT_DROPS",
        "UP_TO_18, 20, 16.5, 16.5, OUTSIDE",
        "UP_TO_15, 30, 15, 15, WITHOUT_DROPS",
        "UP_TO_15, 30, 15.5, 15.5, OUTSIDE",
        "UP_TO_15, 20, 14, 14, WITHOUT_DROPS",
        "UP_TO_15, 20, 14.5, 14.5, OUTSIDE",
        "UP_TO_12, 30, 12, 12, WITHOUT_DROPS",
        "UP_TO_12, 30, 12.5, 12.5, OUTSIDE",
        "UP_TO_12, 20, 12, 12, WITHOUT_DROPS",
        "UP_TO_12, 19, 11.5, 11.5, OUTSIDE",
        "UP_TO_21, 30, 6, 6, WITHOUT_DROPS",
        "UP_TO_21, 30, 5.5, 5.5, OUTSIDE",
        "UP_TO_18, 30, 18, 19, OPEN",
        "UP_TO_18, 30, 19, 18, OPEN"
    })
    void aPressureIsInsideUpToTheLimitAndOutsideBeyondIt(
            SuccessSet set, double before, double one, double other, Result result) {
        CaseOutcome outcome = new AnEye().before(before).then(one, other).outcome();
        assertThat(set.judge(outcome, LOWEST).result()).isEqualTo(result);
    }

    @Test
    void oneVisitOutsideIsForgivenAndTwoRunningAreNot() {
        assertThat(judge(new AnEye().before(30).then(15, 15, 25))).isEqualTo(Result.WITHOUT_DROPS);
        assertThat(judge(new AnEye().before(30).then(15, 25, 15))).isEqualTo(Result.OPEN);
        assertThat(judge(new AnEye().before(30).then(15, 25, 25))).isEqualTo(Result.OUTSIDE);
        assertThat(judge(new AnEye().before(30).then(25, 15, 15))).isEqualTo(Result.WITHOUT_DROPS);
    }

    @Test
    void dropsAtAnyVisitFromMonthThreeOnMakeItQualifiedAndEarlierOnesDoNot() {
        AnEye withDrops = new AnEye().before(30).seen(FollowUp.M3, 15, 0).seen(FollowUp.M6, 15, 1);
        AnEye earlier = new AnEye().before(30).seen(FollowUp.M1, 15, 2).then(15, 15);
        assertThat(judge(withDrops)).isEqualTo(Result.WITH_DROPS);
        assertThat(judge(earlier)).isEqualTo(Result.WITHOUT_DROPS);
    }

    @Test
    void withoutABaselineOrASecondVisitNothingIsSaid() {
        assertThat(judge(new AnEye().then(15, 15))).isEqualTo(Result.OPEN);
        assertThat(judge(new AnEye().before(0).then(0, 0))).isEqualTo(Result.OPEN);
        assertThat(judge(new AnEye().before(30).then(15))).isEqualTo(Result.OPEN);
        assertThat(judge(new AnEye().before(30).seen(FollowUp.W1, 25, 0).seen(FollowUp.M1, 25, 0)))
                .as("nothing before month 3 counts")
                .isEqualTo(Result.OPEN);
    }

    @Test
    void furtherSurgeryAndLossOfLightAreOutsideWhateverThePressureAndTheWindow() {
        assertThat(ground(new AnEye().enter(ended(true, false), null))).isEqualTo(Ground.MORE_SURGERY);
        assertThat(ground(new AnEye().before(30).then(15, 15).enter(ended(false, true), null)))
                .isEqualTo(Ground.LIGHT_LOST);
    }

    @Test
    void lowPressureAloneIsNamedApart() {
        assertThat(ground(new AnEye().before(30).then(4, 4))).isEqualTo(Ground.LOW_PRESSURE_ALONE);
        assertThat(ground(new AnEye().before(30).then(4, 25))).isEqualTo(Ground.PRESSURE);
        assertThat(ground(new AnEye().before(30).then(4, 25, 4))).isEqualTo(Ground.PRESSURE);
        assertThat(SuccessSet.UP_TO_18
                        .judge(new AnEye().before(30).then(4, 4).outcome(), 4)
                        .result())
                .as("with another lower limit")
                .isEqualTo(Result.WITHOUT_DROPS);
    }

    private static Visit ended(boolean surgery, boolean light) {
        LocalDate day = FollowUp.W1.due(AnEye.OPERATED);
        return new Visit(
                day, new Pressure(12, 0), null, null, null, null, null, Set.of(), surgery, light, Visit.SeenBy.OTHER);
    }

    private static Result judge(AnEye eye) {
        return SuccessSet.UP_TO_18.judge(eye.outcome(), LOWEST).result();
    }

    private static Ground ground(AnEye eye) {
        return SuccessSet.UP_TO_18.judge(eye.outcome(), LOWEST).ground().orElseThrow();
    }
}
