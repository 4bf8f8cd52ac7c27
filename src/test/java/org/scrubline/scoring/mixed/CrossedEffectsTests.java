package org.scrubline.scoring.mixed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.scoring.RandomTables.map;
import static org.scrubline.scoring.RandomTables.scores;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.scoring.reliability.PersonsByItems;
import org.scrubline.scoring.reliability.Projection;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class CrossedEffectsTests {
    private static final List<List<String>> TERMS = List.of(List.of("person"), List.of("rater"));

    private record Design(double[] y, List<String> persons, List<String> raters) {
        CrossedEffects fit() {
            return CrossedEffects.of(y, Map.of("person", persons, "rater", raters), TERMS);
        }
    }

    private static Design crossed(double[][] table) {
        List<String> persons = new ArrayList<>();
        List<String> raters = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int p = 0; p < table.length; p++) {
            for (int r = 0; r < table[p].length; r++) {
                persons.add("P" + p);
                raters.add("R" + r);
                y.add(table[p][r]);
            }
        }
        return new Design(y.stream().mapToDouble(Double::doubleValue).toArray(), persons, raters);
    }

    private static Design sparse(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] table = scores(seed, 12, 5);
        List<String> persons = new ArrayList<>();
        List<String> raters = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int i = 0; i < 70; i++) {
            int p = random.nextInt(12);
            int r = random.nextInt(5);
            persons.add("P" + p);
            raters.add("R" + r);
            y.add(table[p][r] + random.nextDouble());
        }
        return new Design(y.stream().mapToDouble(Double::doubleValue).toArray(), persons, raters);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void onBalancedDataTheFitIsTheAnalysisOfVariance(long seed) {
        double[][] table = scores(seed, 9, 5);
        PersonsByItems anova = PersonsByItems.of(table);
        CrossedEffects fit = crossed(table).fit();
        assertThat(anova.itemVariance()).as("this seed has positive components").isPositive();
        assertThat(fit.variances().get(List.of("person"))).isCloseTo(anova.personVariance(), within(1e-6));
        assertThat(fit.variances().get(List.of("rater"))).isCloseTo(anova.itemVariance(), within(1e-6));
        assertThat(fit.residual()).isCloseTo(anova.residualVariance(), within(1e-6));
        assertThat(fit.intercept()).isCloseTo(anova.mean(), within(1e-9));
        Projection projected = fit.projected("person", List.of("rater"), Map.of("rater", 3));
        assertThat(projected.dependability().orElseThrow())
                .isCloseTo(anova.projected(3).dependability().orElseThrow(), within(1e-6));
    }

    /** NIST Statistical Reference Datasets, one-way analysis of variance; balanced, so both methods agree. */
    @ParameterizedTest
    @ValueSource(strings = {"nist-anova-sirstv", "nist-anova-smls01"})
    void aSingleFactorGivesTheCertifiedComponents(String file) throws IOException {
        JsonNode reference = further(file);
        double[] y = reference
                .get("data")
                .get("y")
                .valueStream()
                .mapToDouble(JsonNode::asDouble)
                .toArray();
        List<String> groups = reference
                .get("data")
                .get("group")
                .valueStream()
                .map(JsonNode::asString)
                .toList();
        CrossedEffects fit = CrossedEffects.of(y, Map.of("group", groups), List.of(List.of("group")));
        for (JsonNode expected : reference.get("expected")) {
            double value = expected.get("value").asDouble();
            if (expected.get("key").asString().equals("var.between")) {
                assertThat(fit.variances().get(List.of("group"))).isCloseTo(value, within(1e-6));
            } else if (expected.get("key").asString().equals("var.within")) {
                assertThat(fit.residual()).isCloseTo(value, within(1e-6));
            }
        }
    }

    private static JsonNode further(String file) throws IOException {
        try (InputStream in = CrossedEffectsTests.class.getResourceAsStream("/reference/further/" + file + ".json")) {
            return JsonMapper.shared().readTree(in);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void namesAndOrderOfTheScoresDoNotMatter(long seed) {
        Design design = sparse(seed);
        List<Integer> order = new ArrayList<>(IntStream.range(0, 70).boxed().toList());
        Collections.reverse(order);
        Design rearranged = new Design(
                order.stream().mapToDouble(i -> design.y()[i]).toArray(),
                order.stream().map(i -> "other " + design.persons().get(i)).toList(),
                order.stream().map(i -> design.raters().get(i)).toList());
        assertClose(rearranged.fit(), design.fit(), 1, 0);
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void theComponentsFollowTheUnitOfTheScale(long seed) {
        Design design = sparse(seed);
        double[] scaled = map(new double[][] {design.y()}, x -> 3 * x + 100)[0];
        assertClose(new Design(scaled, design.persons(), design.raters()).fit(), design.fit(), 3, 100);
    }

    private static void assertClose(CrossedEffects actual, CrossedEffects plain, double scale, double shift) {
        plain.variances()
                .forEach((term, variance) ->
                        assertThat(actual.variances().get(term)).isCloseTo(scale * scale * variance, within(1e-5)));
        assertThat(actual.residual()).isCloseTo(scale * scale * plain.residual(), within(1e-5));
        assertThat(actual.intercept()).isCloseTo(scale * plain.intercept() + shift, within(1e-6));
        assertThat(actual.interceptError()).isCloseTo(scale * plain.interceptError(), within(1e-5));
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void noNearbyComponentsAreLikelier(long seed) {
        Design design = sparse(seed);
        CrossedEffects fit = design.fit();
        List<int[]> levels = List.of(codes(design.persons()), codes(design.raters()));
        ProfiledLikelihood likelihood = new ProfiledLikelihood(design.y(), levels, new int[] {12, 5});
        double person = Math.sqrt(fit.variances().get(List.of("person")) / fit.residual());
        double rater = Math.sqrt(fit.variances().get(List.of("rater")) / fit.residual());
        assertThat(likelihood.at(new double[] {person, rater}).criterion()).isCloseTo(fit.criterion(), within(1e-9));
        for (double step : new double[] {-.1, -.01, .01, .1}) {
            assertThat(likelihood.at(new double[] {person + step, rater}).criterion())
                    .isGreaterThan(fit.criterion());
            assertThat(likelihood.at(new double[] {person, rater + step}).criterion())
                    .isGreaterThanOrEqualTo(fit.criterion());
        }
    }

    private static int[] codes(List<String> names) {
        return names.stream()
                .mapToInt(name -> Integer.parseInt(name.substring(1)))
                .toArray();
    }

    @Test
    void aComponentThatTheDataPushBelowZeroEndsAtZero() {
        double[][] table = scores(5, 8, 4);
        for (double[] row : table) {
            double mean = (row[0] + row[1] + row[2] + row[3]) / 4;
            for (int r = 0; r < 4; r++) {
                row[r] -= mean;
            }
        }
        CrossedEffects fit = crossed(table).fit();
        assertThat(fit.variances().get(List.of("person"))).isZero();
        assertThat(fit.projected("person", List.of("rater"), Map.of("rater", 2)).generalizability())
                .hasValue(0);
    }

    @Test
    void modelsThatCannotBeFittedAreRefused() {
        Design design = crossed(scores(1, 4, 3));
        Map<String, List<String>> facets = Map.of("person", design.persons(), "rater", design.raters());
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CrossedEffects.of(design.y(), facets, List.of(List.of("person", "rater"))))
                .withMessageContaining("cannot be told from the residual");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CrossedEffects.of(design.y(), facets, List.of(List.of("site"))))
                .withMessageContaining("site");
        double[][] additive = {{1, 2, 4}, {2, 3, 5}, {5, 6, 8}};
        assertThatIllegalArgumentException()
                .isThrownBy(() -> crossed(additive).fit())
                .withMessageContaining("may explain every score");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CrossedEffects.of(new double[12], facets, TERMS))
                .withMessageContaining("equal");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CrossedEffects.of(design.y(), facets, List.of(List.of("rater"), List.of("rater"))));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> design.fit().projected("rater", List.of("person"), Map.of()))
                .withMessageContaining("no number for the facet person");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> design.fit().projected("site", List.of("rater"), Map.of("rater", 1, "person", 1)));
    }
}
