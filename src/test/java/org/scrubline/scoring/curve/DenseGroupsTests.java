package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** Programmes that fall apart, and assessments nobody expects, against the dense solution. */
class DenseGroupsTests {

    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));

    private static List<String> steps(int count) {
        return IntStream.range(0, count)
                .mapToObj(s -> String.format("S%02d", s))
                .toList();
    }

    private static Psi psi(int steps, int supervisors) {
        List<Double> none = Collections.nCopies(supervisors, 0.0);
        Psi p = Psi.shipped(5, steps, 0);
        return new Psi(
                p.thresholds(),
                p.difficulty(),
                p.complexity(),
                p.gain(),
                p.gapLoss(),
                p.levelSd(),
                p.gainSd(),
                p.stepSd(),
                p.assessmentSd(),
                p.severitySd(),
                p.pairSd(),
                p.walk(),
                p.gapWalk(),
                none,
                none);
    }

    /** t0 and t1 share v1, t2 has v2 alone, v3 scored nobody: the panel is all four, whoever met them. */
    @Test
    void thePanelReachesAcrossGroups() {
        Random random = new Random(9);
        ScoreTableBuilder builder = new ScoreTableBuilder(5, steps(4), List.of("v3"));
        String[][] scorers = {{"v0", "v1"}, {"v1"}, {"v2"}};
        for (int t = 0; t < 3; t++) {
            for (int i = 0; i < 4; i++) {
                String v = scorers[t][i % scorers[t].length];
                CaseContext context = new CaseContext("c" + i, i, 3 * i, 0, List.of());
                for (String step : steps(4)) {
                    builder.add(new ObservedScore(
                            "t" + t + i, "t" + t, v, context, step, 1 + random.nextInt(t == 2 ? 3 : 5)));
                }
            }
        }
        ScoreTable table = builder.build();
        Psi psi = psi(4, 4);
        PopulationFit fit = MODEL.fit(table, psi, Estimation.GIVEN);
        DenseMode dense = new DenseMode(table, psi);
        assertThat(fit.groups()).hasSize(3);
        assertThat(fit.logLikelihood()).isCloseTo(dense.logLikelihood(), within(1e-7));
        for (int t = 0; t < 3; t++) {
            CurvePoint p = CompetencyModel.smooth(fit, table, "t" + t, ProcedureStandard.usual(List.of()))
                    .points()
                    .get(2);
            RealVector plain = dense.trainee(t, table.caseStart[t] + 2);
            for (int s = 0; s < 4; s++) {
                plain.setEntry(dense.at("step" + t + "," + s), 0.25);
            }
            RealVector seen = plain.subtract(dense.panel());
            double known = psi.gain() * DenseMode.growth(6) - psi.threshold(4);
            assertThat(p.level()).isCloseTo(dense.mean(seen) + known, within(1e-7));
            assertThat(p.sd()).isCloseTo(dense.sd(seen), within(1e-8));
        }
    }

    /** Eighty steps at the lowest level from an able trainee: a likelihood below what one product of numbers can hold. */
    @Test
    void anAssessmentNobodyExpectsKeepsItsLikelihood() {
        ScoreTableBuilder builder = new ScoreTableBuilder(5, steps(80), List.of());
        for (int i = 0; i < 3; i++) {
            CaseContext context = new CaseContext("c" + i, i, 400 + i, 0, List.of());
            for (String step : steps(80)) {
                builder.add(new ObservedScore("a" + i, "t", "v", context, step, i == 2 ? 1 : 5));
            }
        }
        ScoreTable table = builder.build();
        Psi tight = Psi.shipped(5, 80, 0);
        Psi psi = new Psi(
                tight.thresholds(),
                tight.difficulty(),
                List.of(),
                6,
                0,
                0.05,
                0.05,
                0.05,
                0.05,
                0.05,
                0.05,
                1e-4,
                0,
                List.of(0.0),
                List.of(0.0));
        DenseMode dense = new DenseMode(table, psi);
        assertThat(dense.logLikelihood()).isLessThan(-300);
        assertThat(MODEL.fit(table, psi, Estimation.GIVEN).logLikelihood())
                .isCloseTo(dense.logLikelihood(), within(1e-6));
    }

    /** A whole Newton step misses the mode of scores this far from what is expected; half steps find it. */
    @Test
    void scoresFarFromExpectationAreStillSolved() {
        for (int level : new int[] {1, 5}) {
            ScoreTableBuilder builder = new ScoreTableBuilder(5, steps(30), List.of());
            for (int i = 0; i < 12; i++) {
                CaseContext context = new CaseContext("c" + i, i, i * 40, 0, List.of());
                for (String step : steps(30)) {
                    builder.add(new ObservedScore(
                            "a" + i, "t", "v" + i % 2, context, step, i % 3 == 0 ? 6 - level : level));
                }
            }
            ScoreTable table = builder.build();
            Psi wide = psi(30, 2);
            Psi psi = new Psi(
                    List.of(-9.0, -8.9, 8.9, 9.0),
                    wide.difficulty(),
                    List.of(),
                    0,
                    0,
                    5,
                    5,
                    3,
                    5,
                    5,
                    2,
                    4,
                    0,
                    List.of(0.0, 0.0),
                    List.of(0.0, 0.0));
            assertThat(MODEL.fit(table, psi, Estimation.GIVEN).logLikelihood())
                    .isCloseTo(new DenseMode(table, psi).logLikelihood(), within(1e-5));
        }
    }
}
