package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Laws every fit and curve must obey, each on several seeded programmes. */
class LawsTests {

    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(5));

    private static SimulatedProgramme programme(long seed) {
        return new SimulatedProgramme("", seed, 5, 4, 16);
    }

    private static PopulationFit given(ScoreTable table) {
        return MODEL.fit(table, Psi.shipped(5, table.steps().size(), 3), Estimation.GIVEN);
    }

    private static List<CompetencyCurve> curves(PopulationFit fit, ScoreTable table) {
        return CompetencyModel.smoothAll(fit, table, STANDARD);
    }

    @Test
    void theOrderOfRowsChangesNoBit() {
        for (int seed = 0; seed < 5; seed++) {
            SimulatedProgramme p = programme(seed);
            List<ObservedScore> shuffled = new ArrayList<>(p.scores);
            Collections.shuffle(shuffled, new Random(seed));
            ScoreTable a = p.table();
            ScoreTable b = ScoreTable.of(5, List.of(), shuffled);
            PopulationFit fit = MODEL.fit(a);
            assertThat(MODEL.fit(b)).isEqualTo(fit);
            assertThat(curves(fit, b)).isEqualTo(curves(fit, a));
        }
    }

    @Test
    void theNumberOfThreadsChangesNoBit() throws Exception {
        ScoreTable table = programme(3).table();
        List<PopulationFit> fits = new ArrayList<>();
        for (int threads : new int[] {1, 2, 7}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                fits.add(pool.submit(() -> MODEL.fit(table, Psi.shipped(5, 22, 3), Estimation.ALL))
                        .get());
            } finally {
                pool.shutdown();
            }
        }
        PopulationFit alone = new PopulationFitter(table, ModelSettings.standard(5), Workers.ONE)
                .fit(Psi.shipped(5, 22, 3), Estimation.ALL);
        assertThat(fits).allMatch(alone::equals);
    }

    @Test
    void aStepNotSeenChangesNothing() {
        for (int seed = 0; seed < 5; seed++) {
            SimulatedProgramme p = programme(seed);
            Random random = new Random(seed);
            List<ObservedScore> more = new ArrayList<>(p.scores);
            for (ObservedScore s : p.scores) {
                if (random.nextInt(50) == 0) {
                    CaseContext later = new CaseContext(
                            "later" + s.assessment(), 1000, 60, 0, s.context().complexity());
                    more.add(new ObservedScore(
                            "later" + s.assessment() + s.step(), s.trainee(), s.supervisor(), later, "S00", 1, 5));
                }
            }
            assertThat(more.size()).isGreaterThan(p.scores.size());
            ScoreTable with = ScoreTable.of(5, List.of(), more);
            PopulationFit fit = MODEL.fit(p.table());
            assertThat(MODEL.fit(with)).isEqualTo(fit);
            assertThat(curves(fit, with)).isEqualTo(curves(fit, p.table()));
        }
    }

    /** With the parameters given, doubling any one assessment of a record can only narrow the bands of that trainee. */
    @Test
    void oneMoreIdenticalAssessmentNeverWidensABand() {
        int compared = 0;
        for (int seed = 0; seed < 12; seed++) {
            List<ObservedScore> same = identical(seed);
            ScoreTable before = ScoreTable.of(5, List.of(), same);
            List<ObservedScore> more = new ArrayList<>(same);
            String doubled = same.get(new Random(seed).nextInt(same.size())).assessment();
            same.stream()
                    .filter(s -> s.assessment().equals(doubled))
                    .map(s -> new ObservedScore(
                            s.assessment() + "again", s.trainee(), s.supervisor(), s.context(), s.step(), s.lowest()))
                    .forEach(more::add);
            ScoreTable after = ScoreTable.of(5, List.of(), more);
            List<CurvePoint> a = curves(given(before), before).get(0).points();
            List<CurvePoint> b = curves(given(after), after).get(0).points();
            for (int i = 0; i < a.size(); i++) {
                assertThat(b.get(i).sd()).isLessThanOrEqualTo(a.get(i).sd() + 1e-9);
                compared++;
            }
        }
        assertThat(compared).isEqualTo(12 * 8);
    }

    /** Eight cases whose assessments are all alike. */
    private static List<ObservedScore> identical(int seed) {
        Random random = new Random(seed);
        int[] levels = random.ints(22, 2, 6).toArray();
        return IntStream.range(0, 8)
                .boxed()
                .flatMap(i -> IntStream.range(0, 22)
                        .mapToObj(s -> new ObservedScore(
                                "a" + i,
                                "t",
                                "v",
                                new CaseContext("c" + i, i, i, 0, List.of(0.0, 0.0, 0.0)),
                                String.format("S%02d", s),
                                levels[s])))
                .toList();
    }

    @Test
    void scoresNeverMakeABandWiderThanThePopulations() {
        for (int seed = 0; seed < 8; seed++) {
            ScoreTable table = programme(seed).table();
            PopulationFit fit = given(table);
            for (String trainee : table.trainees()) {
                SmoothedTrainee s = SmoothedTrainee.of(fit, table, trainee);
                for (int i = 0; i < s.cases(); i++) {
                    assertThat(s.variances(i)[1])
                            .isPositive()
                            .isLessThan(s.priorVariance(i, fit.supervisors().size()));
                }
            }
        }
    }

    /** Turning the scale round (level y becomes 6 - y) mirrors every curve, at mirrored parameters without priors. */
    @Test
    void aMirroredScaleGivesMirroredCurves() {
        CompetencyModel free = new CompetencyModel(new ModelSettings(Terms.FULL, 20, false, false, PsiPriors.none()));
        for (int seed = 0; seed < 5; seed++) {
            ScoreTable table = programme(seed).table();
            ScoreTable mirrored = ScoreTable.of(
                    5,
                    List.of(),
                    programme(seed).scores.stream()
                            .map(s -> new ObservedScore(
                                    s.assessment(),
                                    s.trainee(),
                                    s.supervisor(),
                                    s.context(),
                                    s.step(),
                                    6 - s.highest(),
                                    6 - s.lowest()))
                            .toList());
            Psi psi = Psi.shipped(5, 22, 3).withDifficulty(difficulties(seed));
            PopulationFit fit = free.fit(table, psi, Estimation.GIVEN);
            PopulationFit turned = free.fit(mirrored, mirrored(psi), Estimation.GIVEN);
            assertThat(turned.logLikelihood()).isCloseTo(fit.logLikelihood(), within(1e-6));
            for (String trainee : table.trainees()) {
                SmoothedTrainee a = SmoothedTrainee.of(fit, table, trainee);
                SmoothedTrainee b = SmoothedTrainee.of(turned, mirrored, trainee);
                for (int i = 0; i < a.cases(); i++) {
                    assertThat(b.level(i)).isCloseTo(-a.level(i), within(1e-6));
                    assertThat(b.variances(i)[1]).isCloseTo(a.variances(i)[1], within(1e-7));
                }
            }
        }
    }

    private static List<Double> difficulties(int seed) {
        double[] beta = new Random(seed).doubles(22, -1, 1).toArray();
        double mean = IntStream.range(0, 22).mapToDouble(i -> beta[i]).sum() / 22;
        return IntStream.range(0, 22).mapToObj(i -> beta[i] - mean).toList();
    }

    private static Psi mirrored(Psi p) {
        List<Double> tau = new ArrayList<>();
        for (int k = p.thresholds().size() - 1; k >= 0; k--) {
            tau.add(-p.thresholds().get(k));
        }
        return new Psi(
                tau,
                negative(p.difficulty()),
                negative(p.complexity()),
                -p.gain(),
                -p.gapLoss(),
                p.levelSd(),
                p.gainSd(),
                p.stepSd(),
                p.assessmentSd(),
                p.severitySd(),
                p.pairSd(),
                p.walk(),
                p.gapWalk(),
                List.of(),
                List.of());
    }

    private static List<Double> negative(List<Double> values) {
        return values.stream().map(v -> -v).toList();
    }

    @Test
    void renamingPeopleChangesNoLevel() {
        SimulatedProgramme p = programme(6);
        ScoreTable table = p.table();
        ScoreTable renamed = ScoreTable.of(
                5,
                List.of(),
                p.scores.stream()
                        .map(s -> new ObservedScore(
                                s.assessment(),
                                "z" + (9 - Integer.parseInt(s.trainee().substring(1))),
                                "w" + (9 - Integer.parseInt(s.supervisor().substring(1))),
                                s.context(),
                                s.step(),
                                s.lowest()))
                        .toList());
        List<CompetencyCurve> a = curves(given(table), table);
        List<CompetencyCurve> b = curves(given(renamed), renamed);
        Collections.reverse(b);
        for (int t = 0; t < a.size(); t++) {
            for (int i = 0; i < a.get(t).points().size(); i++) {
                assertThat(b.get(t).points().get(i).level())
                        .isCloseTo(a.get(t).points().get(i).level(), within(1e-7));
            }
        }
    }

    /** The search must find the same optimum from other starts. */
    @Test
    void theFitDoesNotDependOnItsStart() {
        ScoreTable table = ReferenceSet.read("p3_dynamic_fit").table();
        Psi shipped = Psi.shipped(5, table.steps().size(), 3);
        Psi odd = new Psi(
                List.of(-1.0, 0.0, 0.5, 1.0),
                shipped.difficulty(),
                List.of(0.0, 0.0, 0.0),
                1,
                0.5,
                1.5,
                0.3,
                0.8,
                1,
                0.2,
                0.3,
                0.05,
                0.2,
                List.of(),
                List.of());
        CompetencyModel model =
                new CompetencyModel(new ModelSettings(Terms.FULL, 20, false, false, PsiPriors.defaults(5)));
        PopulationFit a = model.fit(table, shipped, Estimation.ALL);
        PopulationFit b = model.fit(table, odd, Estimation.ALL);
        assertThat(b.logLikelihood()).isCloseTo(a.logLikelihood(), within(1e-3));
        for (int k = 0; k < 4; k++) {
            assertThat(b.psi().thresholds().get(k))
                    .isCloseTo(a.psi().thresholds().get(k), within(0.01));
        }
        assertThat(b.psi().levelSd()).isCloseTo(a.psi().levelSd(), within(0.02));
    }

    @Test
    void severitiesStayWithinTheirPopulation() {
        PopulationFit fit = MODEL.fit(programme(2).table());
        assertThat(fit.severities()).hasSize(4).allSatisfy(s -> {
            assertThat(s.sd()).isBetween(0.01, fit.psi().severitySd());
            assertThat(Math.abs(s.mean())).isLessThan(3);
        });
    }

    /** Smoothing with the trainee's own share taken out of the severities must give back the joint solution. */
    @Test
    void smoothingUnchangedScoresGivesTheJointSolution() {
        ScoreTable table = programme(8).table();
        PsiLayout layout = new PsiLayout(table, Terms.FULL, false, false);
        ProgrammeLikelihood joint = new ProgrammeLikelihood(table, layout, PsiPriors.none(), 20, Workers.ONE);
        joint.solve(
                new ModelPoint(Psi.shipped(5, 22, 3), 20, table.supervisors().size()));
        PopulationFit fit = given(table);
        for (JointSolution group : joint.groups) {
            for (TraineeWork t : group.trainees) {
                SmoothedTrainee s =
                        SmoothedTrainee.of(fit, table, table.trainees().get(t.trainee));
                assertThat(s.work.effect).containsExactly(t.effect, within(1e-7));
                assertThat(s.work.walk).containsExactly(t.walk, within(1e-7));
            }
        }
    }
}
