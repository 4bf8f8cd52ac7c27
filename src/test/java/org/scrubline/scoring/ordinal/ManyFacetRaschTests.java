package org.scrubline.scoring.ordinal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.scrubline.scoring.ordinal.ManyFacetRasch.Rating;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class ManyFacetRaschTests {

    /** 60 persons, 4 raters, 3 items, scores 0 to 3, about half of the cells filled. */
    private static List<Rating> simulated(long seed, int persons) {
        double[] severity = {-.8, -.2, .3, .7};
        double[] difficulty = {-.5, 0, .6};
        double[] steps = {-1.5, 0, 1.5};
        SplittableRandom random = new SplittableRandom(seed);
        List<Rating> ratings = new ArrayList<>();
        for (int p = 0; p < persons; p++) {
            double ability = random.nextDouble(-2.5, 2.5);
            for (int r = 0; r < 4; r++) {
                for (int i = 0; i < 3; i++) {
                    if (random.nextInt(2) == 0) {
                        double pull = ability - severity[r] - difficulty[i];
                        ratings.add(new Rating("P" + p, "R" + r, "I" + i, draw(random.nextDouble(), pull, steps)));
                    }
                }
            }
        }
        return ratings;
    }

    private static int draw(double u, double pull, double[] steps) {
        double[] odds = {1, 0, 0, 0};
        double total = 1;
        for (int k = 0; k < 3; k++) {
            odds[k + 1] = odds[k] * Math.exp(pull - steps[k]);
            total += odds[k + 1];
        }
        int score = 0;
        double below = odds[0] / total;
        while (u > below && score < 3) {
            below += odds[++score] / total;
        }
        return score;
    }

    /**
     * LSAT, 1000 persons x 5 questions, each question taken as a rater of one item: the dichotomous Rasch model.
     * Difficulties are checked against conditional maximum likelihood (reference file); the log-likelihood -2466.938 and
     * the ability deviation .7551 are those of the R package ltm's rasch(LSAT), from memory.
     */
    @Test
    void twoCategoriesAreTheRaschModel() throws IOException {
        JsonNode reference;
        try (InputStream in = ManyFacetRaschTests.class.getResourceAsStream("/reference/further/rasch-lsat.json")) {
            reference = JsonMapper.shared().readTree(in);
        }
        List<Rating> ratings = new ArrayList<>();
        int person = 0;
        for (JsonNode row : reference.get("data").get("responses")) {
            for (int q = 0; q < 5; q++) {
                ratings.add(new Rating(
                        "P" + person, "Q" + (q + 1), "test", row.get(q).asInt()));
            }
            person++;
        }
        ManyFacetRasch fit = ManyFacetRasch.of(ratings, 61);
        assertThat(fit.deviance() / -2).isCloseTo(-2466.938, within(.001));
        assertThat(Math.sqrt(fit.abilityVariance())).isCloseTo(.7551, within(.0005));
        int compared = 0;
        for (JsonNode expected : reference.get("expected")) {
            String key = expected.get("key").asString();
            if (key.startsWith("RM.difficulty.")) {
                assertThat(fit.raters().get("Q" + key.substring(14)))
                        .isCloseTo(expected.get("value").asDouble(), within(.02));
                compared++;
            }
        }
        assertThat(compared).isEqualTo(5);
    }

    @Test
    void severitiesAndStepsSumToZeroAndFollowTheTruth() {
        ManyFacetRasch fit = ManyFacetRasch.of(simulated(4, 400), 61);
        assertThat(fit.raters().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum())
                .isCloseTo(0, within(1e-12));
        assertThat(fit.steps().stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(0, within(1e-12));
        double[] severity = {-.8, -.2, .3, .7};
        for (int r = 0; r < 4; r++) {
            assertThat(fit.raters().get("R" + r)).isCloseTo(severity[r], within(.25));
        }
        assertThat(fit.items().get("I2")).isGreaterThan(fit.items().get("I0"));
        assertThat(fit.abilityVariance()).isCloseTo(25 / 12.0, within(.6));
    }

    @Test
    void aCoarseGridIsRefinedToTheSameAnswer() {
        List<Rating> ratings = simulated(5, 60);
        ManyFacetRasch coarse = ManyFacetRasch.of(ratings, 11);
        ManyFacetRasch fine = ManyFacetRasch.of(ratings, 241);
        assertThat(coarse.nodes()).isGreaterThan(11);
        assertThat(coarse.deviance()).isCloseTo(fine.deviance(), within(1e-5));
        assertThat(coarse.abilityVariance()).isCloseTo(fine.abilityVariance(), within(1e-4));
    }

    @Test
    void theGradientIsThatOfTheDeviance() {
        FacetDesign design = new FacetDesign(simulated(6, 20));
        FacetLikelihood likelihood = new FacetLikelihood(design, 101);
        double[] at = new double[design.parameters()];
        for (int k = 0; k < at.length; k++) {
            at[k] = .1 * k - .3;
        }
        double[] gradient = new double[at.length];
        double[] unused = new double[at.length];
        likelihood.value(at, gradient);
        for (int k = 0; k < at.length; k++) {
            double[] up = at.clone();
            double[] down = at.clone();
            up[k] += 1e-5;
            down[k] -= 1e-5;
            double slope = (likelihood.value(up, unused) - likelihood.value(down, unused)) / 2e-5;
            assertThat(gradient[k]).as("parameter %s", k).isCloseTo(slope, within(1e-5));
        }
    }

    @Test
    void namesAndOriginOfTheScoresDoNotMatter() {
        List<Rating> ratings = simulated(7, 60);
        List<Rating> renamed = ratings.stream()
                .map(r -> new Rating("x" + r.person(), r.rater().replace('R', 'Z'), r.item(), r.score() + 1))
                .toList();
        ManyFacetRasch plain = ManyFacetRasch.of(ratings, 61);
        ManyFacetRasch other = ManyFacetRasch.of(renamed, 61);
        assertThat(other.deviance()).isCloseTo(plain.deviance(), within(1e-7));
        for (Map.Entry<String, Double> rater : plain.raters().entrySet()) {
            assertThat(other.raters().get(rater.getKey().replace('R', 'Z'))).isCloseTo(rater.getValue(), within(1e-5));
        }
    }

    @Test
    void ratersAtOppositeEndsOfTheScaleAreRefused() {
        List<Rating> apart = new ArrayList<>();
        for (String person : List.of("a", "b", "c", "d")) {
            apart.add(new Rating(person, "R", "i", 0));
            apart.add(new Rating(person, "S", "i", 1));
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ManyFacetRasch.of(apart, 41))
                .withMessageContaining("run away");
    }

    @Test
    void ratingsThatSayNothingAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> ManyFacetRasch.of(List.of(), 61));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ManyFacetRasch.of(
                        List.of(
                                new Rating("a", "R", "i", 0),
                                new Rating("b", "S", "i", 2),
                                new Rating("c", "S", "i", 2)),
                        61))
                .withMessageContaining("Every category");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        ManyFacetRasch.of(List.of(new Rating("a", "R", "i", 1), new Rating("b", "R", "i", 2)), 61))
                .withMessageContaining("2 raters");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        ManyFacetRasch.of(List.of(new Rating("a", "R", "i", 1), new Rating("b", "S", "i", 1)), 61))
                .withMessageContaining("one category");
    }
}
