package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

class GradientTests {

    private final ReferenceSet set = ReferenceSet.read("p2_dynamic_given_psi");
    private final ScoreTable table = set.table();

    @Test
    void theGradientEqualsTheReference() {
        PsiLayout layout = new PsiLayout(table, Terms.FULL, false, false);
        double[] gradient = new double[layout.size];
        new ProgrammeLikelihood(table, layout, PsiPriors.none(), 20, Workers.ONE)
                .evaluate(layout.vector(set.psi()), gradient);
        for (String group : layout.groups()) {
            JsonNode expected = set.expected().path("gradient_at_psi").path(group);
            assertThat(expected.size()).as(group).isEqualTo(layout.length(group));
            for (int i = 0; i < layout.length(group); i++) {
                assertThat(gradient[layout.start(group) + i])
                        .as("%s[%d]", group, i)
                        .isCloseTo(expected.path(i).asDouble(), within(set.tolerance("gradient_abs")));
            }
        }
    }

    /** A gradient leaves nothing behind for the next. */
    @Test
    void theSamePointGivesTheSameGradientAgain() {
        PsiLayout layout = new PsiLayout(table, Terms.FULL, true, true);
        ProgrammeLikelihood likelihood = new ProgrammeLikelihood(table, layout, PsiPriors.defaults(5), 20, Workers.ONE);
        double[] at = layout.vector(set.psi());
        double[] first = new double[at.length];
        likelihood.evaluate(at, first);
        double[] elsewhere = at.clone();
        elsewhere[layout.start("mu_g")] += 0.5;
        likelihood.evaluate(elsewhere, new double[at.length]);
        double[] again = new double[at.length];
        likelihood.evaluate(at, again);
        assertThat(again).containsExactly(first, within(1e-5));
    }

    /** All 40 parameters at once, habits of supervisors and priors included, away from any optimum. */
    @Test
    void theGradientEqualsFiniteDifferences() {
        differencesAgree(Terms.FULL, true, true, PsiPriors.defaults(5));
    }

    @Test
    void theGradientOfEveryReducedModelEqualsFiniteDifferences() {
        for (Terms terms : List.of(
                new Terms(false, false, false, false, false, true),
                new Terms(true, false, true, true, false, true),
                new Terms(true, true, false, false, true, false),
                new Terms(false, false, false, false, false, false))) {
            differencesAgree(terms, true, false, PsiPriors.none());
        }
    }

    @Test
    void intervalScoresHaveTheRightGradient() {
        Random random = new Random(4);
        List<ObservedScore> wide = set.scores().stream()
                .map(s -> random.nextInt(3) > 0
                        ? s
                        : new ObservedScore(
                                s.assessment(),
                                s.trainee(),
                                s.supervisor(),
                                s.context(),
                                s.step(),
                                Math.max(1, s.lowest() - random.nextInt(3)),
                                Math.min(5, s.highest() + random.nextInt(3))))
                .toList();
        ScoreTable intervals = ScoreTable.of(5, table.steps(), wide);
        differencesAgree(intervals, Terms.FULL, true, true, PsiPriors.defaults(5));
    }

    private void differencesAgree(Terms terms, boolean range, boolean halo, PsiPriors priors) {
        differencesAgree(table, terms, range, halo, priors);
    }

    private void differencesAgree(ScoreTable scores, Terms terms, boolean range, boolean halo, PsiPriors priors) {
        PsiLayout layout = new PsiLayout(scores, terms, range, halo);
        ProgrammeLikelihood likelihood = new ProgrammeLikelihood(scores, layout, priors, 20, Workers.ONE);
        double[] at = layout.vector(set.psi());
        Random random = new Random(1);
        for (int i = 0; i < at.length; i++) {
            at[i] += 0.1 * random.nextGaussian();
        }
        double[] gradient = new double[at.length];
        likelihood.evaluate(at, gradient);
        for (int i = 0; i < at.length; i++) {
            double h = 1e-4;
            double[] moved = at.clone();
            moved[i] += h;
            double up = likelihood.evaluate(moved, new double[0]);
            moved[i] -= 2 * h;
            double down = likelihood.evaluate(moved, new double[0]);
            assertThat(gradient[i]).as("entry %d of %s", i, terms).isCloseTo((up - down) / (2 * h), within(1e-3));
        }
    }
}
