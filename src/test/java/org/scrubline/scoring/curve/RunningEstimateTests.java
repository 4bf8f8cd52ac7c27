package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.assertj.core.util.DoubleComparator;
import org.junit.jupiter.api.Test;

/** The case-by-case update where its numbers can be had without it. */
class RunningEstimateTests {

    private static final List<String> STEPS =
            IntStream.range(0, 12).mapToObj(i -> String.format("S%02d", i)).toList();
    private static final CaseContext CASE = new CaseContext("c", 0, 0, 0, List.of(0.0, 0.0, 0.0));
    private final Psi psi = Psi.shipped(5, 12, 3);
    private final PopulationFit fit =
            new CompetencyModel(ModelSettings.standard(5)).fit(table("other", "known", CASE), psi, Estimation.GIVEN);

    private static ScoreTable table(String trainee, String supervisor, CaseContext context) {
        List<ObservedScore> scores = new ArrayList<>();
        for (int s = 0; s < STEPS.size(); s++) {
            scores.add(new ObservedScore("a", trainee, supervisor, context, STEPS.get(s), 1 + s % 4));
        }
        return ScoreTable.of(5, STEPS, scores);
    }

    /**
     * A new trainee's first case by a supervisor nobody knows: every variance is the population's, and the shift that the
     * scores ask for solves one equation, here by bisection.
     */
    @Test
    void theFirstInnovationIsTheShiftAskedForOverItsSpread() {
        CaseContext third = new CaseContext("c", 0, 3, 2, List.of(1.0, 1.0, 0.0));
        ScoreTable table = table("new", "unknown", third);
        double growth = 1 - Math.exp(-3 / 20.0);
        double expected = growth * psi.gain()
                - 2 * psi.gapLoss()
                - psi.complexity().get(0)
                - psi.complexity().get(1);
        double low = -10;
        double high = 10;
        for (int k = 0; k < 80; k++) {
            double c = (low + high) / 2;
            double asks = -c / 4;
            for (int s = 0; s < 12; s++) {
                asks += 1 - above(1 + s % 4, expected + c) - above(2 + s % 4, expected + c);
            }
            low = asks > 0 ? c : low;
            high = asks > 0 ? high : c;
        }
        double weight = 0;
        double squares = 0;
        for (int s = 0; s < 12; s++) {
            double w = variance(above(1 + s % 4, expected + low)) + variance(above(2 + s % 4, expected + low));
            weight += w;
            squares += w * w;
        }
        double spread = square(psi.levelSd())
                + square(growth * psi.gainSd())
                + psi.walk()
                + 2 * psi.gapWalk()
                + square(psi.pairSd())
                + square(psi.severitySd())
                + square(psi.assessmentSd())
                + square(psi.stepSd()) * squares / (weight * weight)
                + 1 / weight;
        double shift = low * (weight + 0.25) / weight;
        assertThat(RunningPath.of(fit, table, "new").points().get(0).innovation())
                .isCloseTo(shift / Math.sqrt(spread), within(1e-6));
    }

    @Test
    void beforeTheFirstCaseTheNextOneIsThePopulations() {
        RunningPath nothing = RunningPath.of(fit, table("other", "known", CASE), "new");
        NextCase law = nothing.state().next(new int[] {2, 5}, new double[] {0.5, 0, 1}, 0.3);
        assertThat(nothing.points()).isEmpty();
        assertThat(law.experience()).isZero();
        assertThat(law.mean()[0])
                .isCloseTo(
                        -0.3 - 0.5 * psi.complexity().get(0) - psi.complexity().get(2), within(1e-12));
        assertThat(law.covariance()[0]).isCloseTo(square(psi.levelSd()) + psi.walk(), within(1e-12));
        assertThat(law.covariance()[5]).isCloseTo(square(psi.gainSd()), within(1e-12));
        assertThat(law.covariance()[10]).isCloseTo(square(psi.stepSd()), within(1e-12));
    }

    /** Three cases, the second with two scorers; each assessment by each of the ways there. */
    @Test
    void extendingByAnAssessmentEqualsRunningItWhole() {
        List<String> forms = List.of("a c0 known", "b c1 known", "c c1 other", "d c2 unknown");
        RunningPath extended = RunningPath.of(fit, history(forms.subList(0, 1)), "new");
        for (int n = 2; n <= forms.size(); n++) {
            extended.extend(history(forms.subList(0, n)));
            assertThat(extended.points())
                    .usingRecursiveComparison()
                    .withComparatorForType(new DoubleComparator(1e-12), Double.class)
                    .isEqualTo(RunningPath.of(fit, history(forms.subList(0, n)), "new")
                            .points());
        }
        assertThat(extended.points()).extracting(RunningPoint::caseId).containsExactly("c0", "c1", "c1", "c2");
        assertThat(extended.state().next(new int[] {0}, new double[3], 0).experience())
                .isEqualTo(3);
    }

    @Test
    void aChangedPastIsRefused() {
        RunningPath path = RunningPath.of(fit, history(List.of("b c1 known")), "new");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> path.extend(history(List.of("a c0 known", "b c1 known"))))
                .withMessageContaining("history was changed at assessment a");
        assertThat(path.points()).hasSize(1);
    }

    /** Each form "assessment case supervisor"; the n-th case comes after n months away. */
    private static ScoreTable history(List<String> forms) {
        List<ObservedScore> scores = new ArrayList<>();
        for (String form : forms) {
            String[] part = form.split(" ");
            int place = part[1].charAt(1) - '0';
            CaseContext context = new CaseContext(part[1], place, place, place, List.of(0.0, 0.0, 0.0));
            for (int s = 0; s < STEPS.size(); s++) {
                scores.add(new ObservedScore(
                        part[0], "new", part[2], context, STEPS.get(s), 1 + (s + part[0].charAt(0)) % 5));
            }
        }
        return ScoreTable.of(5, STEPS, scores);
    }

    private double above(int k, double location) {
        return k == 1 ? 1 : 1 / (1 + Math.exp(psi.threshold(k) - location));
    }

    private static double variance(double p) {
        return p * (1 - p);
    }

    private static double square(double x) {
        return x * x;
    }
}
