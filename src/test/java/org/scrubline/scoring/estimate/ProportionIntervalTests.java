package org.scrubline.scoring.estimate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ProportionIntervalTests {

    private interface Method {
        Interval of(int successes, int n, double confidence);
    }

    private static final Map<String, Method> METHODS = Map.of(
            "wald", ProportionInterval::wald,
            "wilson", ProportionInterval::wilson,
            "wilsoncc", ProportionInterval::wilsonContinuityCorrected,
            "clopper", ProportionInterval::clopperPearson,
            "jeffreys", ProportionInterval::jeffreys,
            "midp", ProportionInterval::midP,
            "agresticoull", ProportionInterval::agrestiCoull);

    /** Newcombe, Stat Med 1998;17:857, Table I (81 of 263 and 15 of 148); sources and tolerances in the file. */
    @TestFactory
    List<DynamicTest> everyMethodGivesNewcombesLimits() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (JsonNode expected : newcombe().get("expected")) {
            String key = expected.get("key").asString();
            String[] parts = key.split("[./]", -1);
            Interval interval = METHODS.get(parts[2]).of(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]), .95);
            double actual = parts[3].equals("lo") ? interval.low() : interval.high();
            tests.add(DynamicTest.dynamicTest(
                    key,
                    () -> assertThat(actual)
                            .isCloseTo(
                                    expected.get("value").asDouble(),
                                    within(expected.get("abs_tol").asDouble()))));
        }
        assertThat(tests).hasSize(28);
        return tests;
    }

    private static JsonNode newcombe() throws IOException {
        try (InputStream in =
                ProportionIntervalTests.class.getResourceAsStream("/reference/proportion-newcombe-a.json")) {
            return JsonMapper.shared().readTree(in);
        }
    }

    /** Newcombe's Table I, 0 of 20 and 1 of 29, four decimals, from memory. */
    @Test
    void theEndsHaveDefinedLimits() {
        assertThat(ProportionInterval.wilson(0, 20, .95).low()).isZero();
        assertThat(ProportionInterval.wilson(0, 20, .95).high()).isCloseTo(.1611, within(5e-5));
        assertThat(ProportionInterval.wilsonContinuityCorrected(0, 20, .95).high())
                .isCloseTo(.2005, within(5e-5));
        assertThat(ProportionInterval.clopperPearson(0, 20, .95).high()).isCloseTo(.1684, within(5e-5));
        assertThat(ProportionInterval.midP(0, 20, .95).high()).isCloseTo(.1391, within(5e-5));
        assertThat(ProportionInterval.wilson(1, 29, .95).low()).isCloseTo(.0061, within(5e-5));
        assertThat(ProportionInterval.wilson(1, 29, .95).high()).isCloseTo(.1718, within(5e-5));
        assertThat(ProportionInterval.wilsonContinuityCorrected(1, 29, .95).low())
                .isCloseTo(.0018, within(5e-5));
        assertThat(ProportionInterval.wald(0, 20, .95)).isEqualTo(new Interval(0, 0));
    }

    @Test
    void withoutCasesNothingIsKnown() {
        METHODS.forEach(
                (name, method) -> assertThat(method.of(0, 0, .95)).as(name).isEqualTo(new Interval(0, 1)));
    }

    @Test
    void successesAndFailuresMirrorEachOther() {
        forEveryCase((name, method, x, n) -> {
            Interval one = method.of(x, n, .95);
            Interval other = method.of(n - x, n, .95);
            assertThat(one.low()).as(name).isCloseTo(1 - other.high(), within(1e-12));
        });
    }

    @Test
    void moreConfidenceNeverGivesANarrowerInterval() {
        forEveryCase((name, method, x, n) -> {
            if (name.equals("agresticoull")) {
                return; // Its centre moves with the confidence, so with few cases its limits do not nest.
            }
            Interval narrow = method.of(x, n, .80);
            Interval wide = method.of(x, n, .99);
            assertThat(wide.low()).as(name).isLessThanOrEqualTo(narrow.low() + 1e-15);
            assertThat(wide.high()).as(name).isGreaterThanOrEqualTo(narrow.high() - 1e-15);
        });
    }

    @Test
    void limitsRiseWithTheSuccesses() {
        forEveryCase((name, method, x, n) -> {
            if (x > 0 && !name.equals("wald")) {
                assertThat(method.of(x, n, .95).low())
                        .as("%s %s/%s", name, x, n)
                        .isGreaterThanOrEqualTo(method.of(x - 1, n, .95).low());
            }
        });
    }

    @Test
    void theExactIntervalContainsMidPWhichContainsTheProportion() {
        forEveryCase((name, method, x, n) -> {
            Interval exact = ProportionInterval.clopperPearson(x, n, .95);
            Interval mid = ProportionInterval.midP(x, n, .95);
            assertThat(exact.contains(mid.low()) && exact.contains(mid.high())).isTrue();
            assertThat(mid.contains((double) x / n)).isTrue();
        });
    }

    @Test
    void theExactIntervalCoversAtLeastAsOftenAsItSays() {
        int n = 30;
        for (double p = .01; p < 1; p += .01) {
            BinomialDistribution binomial = BinomialDistribution.of(n, p);
            double covered = 0;
            for (int x = 0; x <= n; x++) {
                covered += ProportionInterval.clopperPearson(x, n, .95).contains(p) ? binomial.probability(x) : 0;
            }
            assertThat(covered).isGreaterThanOrEqualTo(.95 - 1e-12);
        }
    }

    @ParameterizedTest
    @CsvSource({"-1, 5, .95", "6, 5, .95", "1, -1, .95", "1, 5, 1", "1, 5, 0", "1, 5, NaN"})
    void wrongCountsAndConfidencesAreRefusedWithASentence(int x, int n, double confidence) {
        METHODS.values()
                .forEach(method -> assertThatIllegalArgumentException()
                        .isThrownBy(() -> method.of(x, n, confidence))
                        .withMessageEndingWith("."));
    }

    private interface Law {
        void check(String name, Method method, int successes, int n);
    }

    private static void forEveryCase(Law law) {
        for (int n : new int[] {1, 2, 7, 30}) {
            for (int x = 0; x <= n; x++) {
                int successes = x;
                METHODS.forEach((name, method) -> law.check(name, method, successes, n));
            }
        }
    }
}
