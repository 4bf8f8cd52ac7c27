package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The optimiser's vector: what stands where, how it is scaled, and what the priors add. */
class PsiLayoutTests {

    /** 2 trainees, 2 supervisors, 3 steps, 2 covariates, 4 assessments, 12 scores. */
    private final ScoreTable table = table();

    private static ScoreTable table() {
        List<ObservedScore> scores = new ArrayList<>();
        for (int j = 0; j < 4; j++) {
            for (int s = 0; s < 3; s++) {
                CaseContext context = new CaseContext("c" + j, j, j, 0, List.of(0.0, 1.0));
                scores.add(new ObservedScore("a" + j, "t" + j % 2, "v" + j / 2, context, "S" + s, 2 + (j + s) % 3));
            }
        }
        return ScoreTable.of(5, List.of(), scores);
    }

    private static final Psi PSI = new Psi(
            List.of(-2.0, -0.5, 1.0, 3.0),
            List.of(0.4, -0.1, -0.3),
            List.of(0.6, 0.2),
            3.5,
            0.15,
            0.7,
            0.9,
            0.45,
            0.55,
            0.65,
            0.2,
            0.02,
            0.03,
            List.of(0.1, -0.1),
            List.of(0.2, -0.3));

    @Test
    void theVectorGoesThereAndBack() {
        PsiLayout layout = new PsiLayout(table, Terms.FULL, true, true);
        double[] v = layout.vector(PSI);
        assertThat(v).hasSize(4 + 2 + 2 + 6 + 4 + 4);
        double[] first = {-2, Math.log(1.5), Math.log(1.5), Math.log(2), 0.4, -0.1, 0.6, 0.2, 3.5};
        assertThat(Arrays.copyOf(v, first.length)).containsExactly(first, within(1e-12));
        Psi back = layout.psi(v);
        for (int k = 0; k < 4; k++) {
            assertThat(back.thresholds().get(k)).isCloseTo(PSI.thresholds().get(k), within(1e-12));
        }
        for (int s = 0; s < 3; s++) {
            assertThat(back.difficulty().get(s)).isCloseTo(PSI.difficulty().get(s), within(1e-12));
        }
        assertThat(back.complexity()).isEqualTo(PSI.complexity());
        assertThat(back.gain()).isEqualTo(3.5);
        assertThat(back.gapLoss()).isEqualTo(0.15);
        assertThat(back.levelSd()).isCloseTo(0.7, within(1e-12));
        assertThat(back.gainSd()).isCloseTo(0.9, within(1e-12));
        assertThat(back.stepSd()).isCloseTo(0.45, within(1e-12));
        assertThat(back.assessmentSd()).isCloseTo(0.55, within(1e-12));
        assertThat(back.severitySd()).isCloseTo(0.65, within(1e-12));
        assertThat(back.pairSd()).isCloseTo(0.2, within(1e-12));
        assertThat(back.walk()).isCloseTo(0.02, within(1e-12));
        assertThat(back.gapWalk()).isCloseTo(0.03, within(1e-12));
        assertThat(back.range()).isEqualTo(PSI.range());
        assertThat(back.halo()).isEqualTo(PSI.halo());
    }

    @Test
    void termsLeftOutHaveNoPlace() {
        PsiLayout none = new PsiLayout(table, new Terms(false, false, false, false, false, false), false, true);
        assertThat(none.groups()).containsExactly("tau", "beta", "gamma", "ls_a", "ls_l");
        assertThat(none.size).isEqualTo(4 + 2 + 2 + 2);
        assertThat(none.start("mu_g")).isEqualTo(-1);
        assertThat(none.length("mu_g")).isZero();
        assertThat(none.psi(none.vector(PSI)).gain()).isZero();
        PsiLayout full = new PsiLayout(table, Terms.FULL, true, true);
        assertThat(full.groups())
                .containsExactly(
                        "tau", "beta", "gamma", "mu_g", "ls_g", "phi", "ls_a", "lq", "lqg", "ls_d", "ls_u", "ls_l",
                        "ls_n", "rho", "hal");
        PsiLayout noGap = new PsiLayout(table, new Terms(true, true, false, true, true, true), false, false);
        assertThat(noGap.has("lqg")).isFalse();
        PsiLayout noChain = new PsiLayout(table, new Terms(true, false, true, true, true, true), false, false);
        assertThat(noChain.has("lqg")).isFalse();
    }

    /** No search may leave the range of usable numbers: logarithms stop at 5, τ_2 at 50, variances at exp(-40). */
    @Test
    void farOutTheVectorIsHeldBack() {
        PsiLayout layout = new PsiLayout(table, Terms.FULL, true, true);
        double[] far = layout.vector(PSI);
        Arrays.fill(far, 100);
        Psi high = layout.psi(far);
        assertThat(high.threshold(2)).isEqualTo(50);
        assertThat(high.threshold(3)).isCloseTo(50 + Math.exp(5), within(1e-9));
        assertThat(high.levelSd()).isCloseTo(Math.exp(5), within(1e-9));
        Arrays.fill(far, -100);
        Psi low = layout.psi(far);
        assertThat(low.threshold(2)).isEqualTo(-50);
        assertThat(low.threshold(3)).isCloseTo(-50 + Math.exp(-5), within(1e-12));
        assertThat(low.walk()).isCloseTo(Math.exp(-40), within(1e-25));
    }

    /** The usual size of each entry's uncertainty, from the counts of scores, steps and people; common practice, own constants. */
    @Test
    void everyEntryIsScaledByItsUsualUncertainty() {
        PsiLayout layout = new PsiLayout(table, Terms.FULL, true, true);
        double[] scale = layout.scales(table);
        Map<String, Double> expected = Map.ofEntries(
                Map.entry("tau", 1 / Math.sqrt(0.2 * 12)),
                Map.entry("beta", 1 / Math.sqrt(0.3 * 4)),
                Map.entry("gamma", 1 / Math.sqrt(0.05 * 12)),
                Map.entry("mu_g", 0.5 / Math.sqrt(2)),
                Map.entry("phi", 0.3 / Math.sqrt(2)),
                Map.entry("ls_a", 0.5),
                Map.entry("ls_g", 0.75),
                Map.entry("lq", 1.0),
                Map.entry("lqg", 1.0),
                Map.entry("ls_d", 1 / Math.sqrt(6)),
                Map.entry("ls_u", 1.5 / Math.sqrt(8)),
                Map.entry("ls_l", 0.5),
                Map.entry("ls_n", 0.2),
                Map.entry("rho", 0.05),
                Map.entry("hal", 0.1));
        expected.forEach((group, value) -> {
            for (int i = 0; i < layout.length(group); i++) {
                assertThat(scale[layout.start(group) + i]).as(group).isCloseTo(value, within(1e-12));
            }
        });
        ScoreTable nothing = ScoreTable.of(5, List.of(), List.of());
        for (double s : new PsiLayout(nothing, Terms.FULL, true, true).scales(nothing)) {
            assertThat(s).isPositive().isFinite();
        }
    }

    /** Log kernels of the normal priors, each entry by hand, the last difficulty among them; and their slopes. */
    @Test
    void priorsAddTheirLogKernels() {
        PsiLayout layout = new PsiLayout(table, Terms.FULL, true, true);
        PsiPriors priors = new PsiPriors(Map.of(
                "beta", new PsiPriors.Normal(List.of(0.1, 0.2, 0.3), List.of(1.0, 2.0, 0.5)),
                "gamma", new PsiPriors.Normal(List.of(0.4), List.of(0.5)),
                "mu_g", new PsiPriors.Normal(List.of(3.0), List.of(2.0))));
        double[] v = layout.vector(PSI);
        double[] plain = new double[v.length];
        double[] both = new double[v.length];
        double without = likelihood(layout, PsiPriors.none()).evaluate(v, plain);
        double with = likelihood(layout, priors).evaluate(v, both);
        double kernel = half((0.4 - 0.1) / 1)
                + half((-0.1 - 0.2) / 2)
                + half((-0.3 - 0.3) / 0.5)
                + half((0.6 - 0.4) / 0.5)
                + half((0.2 - 0.4) / 0.5)
                + half((3.5 - 3) / 2);
        assertThat(with - without).isCloseTo(kernel, within(1e-9));
        double last = (-0.3 - 0.3) / 0.25;
        double[] slope = new double[v.length];
        slope[layout.start("beta")] = -0.3 + last;
        slope[layout.start("beta") + 1] = 0.3 / 4 + last;
        slope[layout.start("gamma")] = -0.2 / 0.25;
        slope[layout.start("gamma") + 1] = 0.2 / 0.25;
        slope[layout.start("mu_g")] = -0.5 / 4;
        for (int i = 0; i < v.length; i++) {
            assertThat(both[i] - plain[i]).as("entry %d", i).isCloseTo(slope[i], within(1e-9));
        }
        assertThat(likelihood(layout, priors).evaluate(v, new double[0])).isCloseTo(with, within(1e-9));
    }

    private ProgrammeLikelihood likelihood(PsiLayout layout, PsiPriors priors) {
        return new ProgrammeLikelihood(table, layout, priors, 20, Workers.ONE);
    }

    private static double half(double z) {
        return -z * z / 2;
    }
}
