package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Chance, assurance and forecast where they can be had by hand: one critical step without a shared effect has chance
 * 1 / (1 + exp(-x)), the draws of one unknown are the midpoints of 256 equal shares of the normal law, and without
 * wobble the wait follows from the growth curve alone.
 */
class ReadinessJudgeTests {

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double GAIN = 3;
    private static final double TAU = 0.5;
    private static final double BETA = 0.2;
    private static final double KAPPA = 20;
    private static final Evidence ENOUGH = evidence(true, true);

    private static Evidence evidence(boolean shown, boolean decides) {
        Evidence.Kind kind = shown ? Evidence.Kind.FEW_CASES_FOR_DECISION : Evidence.Kind.FEW_CASES;
        List<Evidence.Reason> reasons = shown && decides ? List.of() : List.of(new Evidence.Reason(kind, "", 1, 12));
        return new Evidence(0.9, Evidence.Strength.REPORTABLE, 20, 5, 0.3, reasons);
    }

    /** One or more steps, level 2 of 2; step difficulties {@link #BETA}, -BETA, BETA, ... */
    private static ModelPoint point(int steps, double assessmentSd, double walk) {
        List<Double> beta = IntStream.range(0, steps)
                .mapToObj(s -> s % 2 == 0 ? BETA : -BETA)
                .toList();
        Psi psi = new Psi(
                List.of(TAU),
                beta,
                List.of(),
                GAIN,
                0.1,
                0.6,
                0.7,
                0.4,
                assessmentSd,
                0.6,
                0.15,
                walk,
                0,
                List.of(),
                List.of());
        return new ModelPoint(psi, KAPPA, 0);
    }

    /** A law in which the common location alone is unknown. */
    private static NextCase law(double common, double sd, double gain, double experience, double... effects) {
        int n = 2 + effects.length;
        double[] mean = new double[n];
        mean[0] = common;
        mean[1] = gain;
        System.arraycopy(effects, 0, mean, 2, effects.length);
        double[] covariance = new double[n * n];
        covariance[0] = sd * sd;
        return new NextCase(mean, covariance, experience);
    }

    private static ReadinessJudge judge(ModelPoint point, NextCase law, double inflation) {
        int[] critical = IntStream.range(0, law.critical()).toArray();
        List<String> codes = Arrays.stream(critical).mapToObj(c -> "S" + c).toList();
        return new ReadinessJudge(point, law, critical, codes, inflation, WholeCase.DRAWS);
    }

    private static double sigmoid(double x) {
        return 1 / (1 + Math.exp(-x));
    }

    private static double logOdds(double p) {
        return Math.log(p / (1 - p));
    }

    /** The deviate of draw i of 256 in rising order. */
    private static double z(int i) {
        return NORMAL.inverseCumulativeProbability((i + 0.5) / WholeCase.DRAWS);
    }

    private static LevelStandard standard(double chance) {
        return new LevelStandard("E", 2, chance);
    }

    @Test
    void aKnownStateHasOneChanceTheProductOfItsSteps() {
        NextCase law = law(1.5, 0, 0, 10, 0.3, -0.4, 0);
        Readiness r = judge(point(3, 0, 1e-9), law, 1).judge(standard(0.5), 0.8, ENOUGH);
        double first = sigmoid(1.5 + 0.3 - BETA - TAU);
        double second = sigmoid(1.5 - 0.4 + BETA - TAU);
        double third = sigmoid(1.5 - BETA - TAU);
        assertThat(r.steps()).extracting(Readiness.StepChance::step).containsExactly("S0", "S1", "S2");
        assertThat(r.steps().get(0).chance()).isCloseTo(first, within(1e-6));
        assertThat(r.steps().get(1).chance()).isCloseTo(second, within(1e-6));
        assertThat(r.steps().get(2).chance()).isCloseTo(third, within(1e-6));
        assertThat(r.chance()).isCloseTo(first * second * third, within(1e-6));
        assertThat(r.low()).isCloseTo(r.chance(), within(1e-5));
        assertThat(r.high()).isCloseTo(r.chance(), within(1e-5));
    }

    @Test
    void theRangeIsThatOfTheNormalLawCarriedToChances() {
        Readiness r = judge(point(1, 0, 1e-9), law(1, 0.8, 0, 10, 0), 1).judge(standard(0.6), 0.8, ENOUGH);
        double above = 1 - BETA - TAU;
        assertThat(r.low()).isCloseTo(sigmoid(above + 0.8 * z(12)), within(1e-6));
        assertThat(r.high()).isCloseTo(sigmoid(above + 0.8 * z(243)), within(1e-6));
        double sum = 0;
        for (int i = 0; i < WholeCase.DRAWS; i++) {
            sum += sigmoid(above + 0.8 * z(i)) / WholeCase.DRAWS;
        }
        assertThat(r.chance()).isCloseTo(sum, within(1e-6));
        double missing = NORMAL.cumulativeProbability((logOdds(0.6) - above) / 0.8);
        assertThat(r.assurance()).isCloseTo(1 - missing, within(0.5 / WholeCase.DRAWS + 1e-9));
    }

    @Test
    void wideningActsOnTheCovariance() {
        Readiness r = judge(point(1, 0, 1e-9), law(1, 0.8, 0, 10, 0), 1.21).judge(standard(0.6), 0.8, ENOUGH);
        assertThat(r.low()).isCloseTo(sigmoid(1 - BETA - TAU + 1.1 * 0.8 * z(12)), within(1e-6));
    }

    /** Half of the draws lie above the median, so a limit at the median's chance is reached by exactly half. */
    @Test
    void assuranceCountsTheDrawsThatReachTheLimit() {
        ReadinessJudge.Chances chances =
                judge(point(1, 0, 1e-9), law(1, 0.8, 0, 10, 0), 1).chances(2);
        double median = sigmoid(1 - BETA - TAU);
        assertThat(chances.atLeast(median)).isEqualTo(0.5);
        assertThat(chances.atLeast(0)).isEqualTo(1);
        assertThat(chances.atLeast(1)).isZero();
        assertThat(chances.atLeast(chances.sorted()[64])).isEqualTo(0.75);
        assertThat(chances.atLeast(Math.nextUp(chances.sorted()[64]))).isEqualTo(191.0 / 256);
    }

    /** Assurance is 192 of 256 here: at a limit of .75 the evidence supports, above it does not yet. */
    @ParameterizedTest
    @CsvSource({
        "true,  true,  .75,  SUPPORTS",
        "true,  true,  .7501,NOT_YET",
        "true,  false, .75,  INSUFFICIENT",
        "true,  false, .7501,NOT_YET",
        "false, false, .75,  INSUFFICIENT",
        "false, false, .7501,INSUFFICIENT"
    })
    void theAnswerNeedsAssuranceAndEvidence(boolean shown, boolean decides, double wanted, Support expected) {
        NextCase law = law(1, 0.8, 0, 10, 0);
        double limit = sigmoid(1 - BETA - TAU + 0.8 * (z(63) + z(64)) / 2);
        Readiness r = judge(point(1, 0, 1e-9), law, 1)
                .judge(new LevelStandard("E", 2, limit), wanted, evidence(shown, decides));
        assertThat(r.assurance()).isEqualTo(0.75);
        assertThat(r.support()).isEqualTo(expected);
        assertThat(r.forecast().shown()).isEqualTo(shown);
    }

    @Test
    void withoutCriticalStepsTheAnswerIsInsufficient() {
        Readiness r = judge(point(1, 0, 1e-9), law(1, 0.8, 0, 10), 1).judge(standard(0.5), 0.8, ENOUGH);
        assertThat(r.assurance()).isEqualTo(1);
        assertThat(r.support()).isEqualTo(Support.INSUFFICIENT);
    }

    /** First k with x + (gain + own) (f(n + k) - f(n)) at or above what is needed; 101 when none up to 100. */
    private static int wait(double x, double own, double experience, double needed) {
        for (int k = 0; k <= 100; k++) {
            double rise = Math.exp(-experience / KAPPA) - Math.exp(-(experience + k) / KAPPA);
            if (x + (GAIN + own) * rise >= needed) {
                return k;
            }
        }
        return 101;
    }

    @ParameterizedTest
    @CsvSource({"-1, 0, 0", "-1, .5, 0", "-.4, 0, 10", ".2, -1, 25", "-3.4, 0, 0", "3, 0, 5", "-1.4, 0, 0"})
    void theForecastFollowsTheGrowthCurve(double x, double own, double experience) {
        double needed = logOdds(0.7) + BETA + TAU;
        Forecast f = judge(point(1, 0, 1e-9), law(x, 0.5, own, experience, 0), 1)
                .judge(standard(0.7), 0.8, ENOUGH)
                .forecast();
        assertThat(f.median())
                .isBetween(
                        wait(x + 0.5 * z(128), own, experience, needed + 0.002),
                        wait(x + 0.5 * z(126), own, experience, needed - 0.002));
        int low = wait(x + 0.5 * z(230), own, experience, needed);
        int high = wait(x + 0.5 * z(25), own, experience, needed);
        assertThat(f.low()).isBetween(low - 1, low + 1);
        assertThat(f.high()).isBetween(high - 2, high + 2);
        assertThat(f.within10()).isCloseTo(share(x, own, experience, needed, 10), within(1.01 / 256));
        assertThat(f.within20()).isCloseTo(share(x, own, experience, needed, 20), within(1.01 / 256));
        assertThat(f.within60()).isCloseTo(share(x, own, experience, needed, 60), within(1.01 / 256));
    }

    /** Share of draws that need no more than so many cases, shown up to .8. */
    private static double share(double x, double own, double experience, double needed, int cases) {
        int within = 0;
        for (int i = 0; i < 256; i++) {
            within += wait(x + 0.5 * z(i), own, experience, needed) <= cases ? 1 : 0;
        }
        return Math.min(0.8, within / 256.0);
    }

    /**
     * Ten steps and a shared effect: the location at which the whole case has the wanted chance by bisection of fine
     * sums, the wait from there by the growth curve.
     */
    @ParameterizedTest
    @CsvSource({"-.5, .4, .5", ".2, .4, .9", "-4, .4, .02", "1, .4, .99", "-30, 60, .9", "-30, 60, .001"})
    void theWaitOfAWholeCaseStartsFromItsOwnChance(double x, double own, double wanted) {
        double[] effects = {0.3, -0.4, 0, 0.1, -0.2, 0.5, 0, 0, 0.2, -0.6};
        Forecast f = judge(point(10, 0.7, 1e-9), law(x, 0, own, 6, effects), 1)
                .judge(standard(wanted), 0.8, ENOUGH)
                .forecast();
        double low = -20;
        double high = 20;
        for (int k = 0; k < 60; k++) {
            double middle = (low + high) / 2;
            boolean enough = wholeCase(middle, effects, 0.7) >= wanted;
            low = enough ? low : middle;
            high = enough ? middle : high;
        }
        assertThat(f.median()).isEqualTo(wait(x, own, 6, low)).isBetween(1, 101);
        assertThat(f.low()).isEqualTo(f.median());
        assertThat(f.high()).isEqualTo(f.median());
    }

    /** Reached between the 99th and the hundredth further case: the last that is looked at. */
    @Test
    void theHundredthCaseStillCounts() {
        double rise = (Math.exp(-10 / KAPPA) * (2 - Math.exp(-99 / KAPPA) - Math.exp(-100 / KAPPA))) / 2;
        double x = logOdds(0.7) + BETA + TAU - (GAIN + 20) * rise;
        Forecast f = judge(point(1, 0, 1e-9), law(x, 0, 20, 10, 0), 1)
                .judge(standard(0.7), 0.8, ENOUGH)
                .forecast();
        assertThat(f.low()).isEqualTo(100);
        assertThat(f.high()).isEqualTo(100);
    }

    /** What is unknown of one step's own effect counts like what is unknown of all steps together. */
    @Test
    void anUnknownStepEffectDelaysLikeAnUnknownLevel() {
        NextCase level = law(-0.6, 0.5, 0, 10, 0);
        NextCase step = new NextCase(level.mean(), new double[] {0, 0, 0, 0, 0, 0, 0, 0, 0.25}, 10);
        Readiness a = judge(point(1, 0, 1e-9), level, 1).judge(standard(0.7), 0.8, ENOUGH);
        Readiness b = judge(point(1, 0, 1e-9), step, 1).judge(standard(0.7), 0.8, ENOUGH);
        assertThat(b.chance()).isCloseTo(a.chance(), within(1e-6));
        assertThat(b.forecast()).isEqualTo(a.forecast());
        assertThat(a.forecast().low()).isLessThan(a.forecast().high());
    }

    private static double wholeCase(double common, double[] effects, double sd) {
        double sum = 0;
        double total = 0;
        for (int q = 0; q <= 400; q++) {
            double deviate = -8 + q / 25.0;
            double product = Math.exp(-deviate * deviate / 2);
            total += product;
            for (int c = 0; c < effects.length; c++) {
                double difficulty = c % 2 == 0 ? BETA : -BETA;
                product *= sigmoid(common + effects[c] - difficulty - TAU + sd * deviate);
            }
            sum += product;
        }
        return sum / total;
    }

    @Test
    void whatIsReachedNowNeedsNoFurtherCase() {
        Forecast f = judge(point(1, 0, 1e-9), law(6, 0.5, 0, 10, 0), 1)
                .judge(standard(0.7), 0.8, ENOUGH)
                .forecast();
        assertThat(f).isEqualTo(new Forecast(true, 0, 0, 0, 0.8, 0.8, 0.8));
    }

    @Test
    void whatGrowthNeverReachesIsBeyondTheHorizon() {
        Forecast f = judge(point(1, 0, 1e-9), law(-9, 0.5, 0, 10, 0), 1)
                .judge(standard(0.7), 0.8, ENOUGH)
                .forecast();
        assertThat(f).isEqualTo(new Forecast(true, 101, 101, 101, 0, 0, 0));
    }

    /**
     * Wobble alone, no growth: a walk of steps s first passes a within n steps with chance 2 (1 - Φ((a + .5826 s) / s√n)),
     * D. Siegmund, Sequential Analysis, 1985 (from memory). 256 draws: standard error .03.
     */
    @Test
    void wobbleAloneReachesTheStandardLikeARandomWalk() {
        double s = 0.3;
        double above = 1;
        double x = logOdds(0.7) + BETA + TAU - above;
        Forecast f = judge(point(1, 0, s * s), law(x, 0, -GAIN, 10, 0), 1)
                .judge(standard(0.7), 0.8, ENOUGH)
                .forecast();
        assertThat(f.within10()).isCloseTo(passage(above, s, 10), within(0.08));
        assertThat(f.within20()).isCloseTo(passage(above, s, 20), within(0.08));
        assertThat(f.within60()).isCloseTo(passage(above, s, 60), within(0.08));
    }

    private static double passage(double above, double step, int steps) {
        return 2 * NORMAL.survivalProbability((above + 0.5826 * step) / (step * Math.sqrt(steps)));
    }
}
