package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Reads one smoothed trainee out into the records of the pages. */
final class CurveWriter {

    private final PopulationFit fit;
    private final ScoreTable table;
    private final String trainee;
    private final ProcedureStandard standard;
    private final SmoothedTrainee smoothed;
    private final double threshold;
    private final double typical;
    private final double[] caseMix;

    CurveWriter(PopulationFit fit, ScoreTable table, String trainee, ProcedureStandard standard) {
        this.fit = fit;
        this.table = table;
        this.trainee = trainee;
        this.standard = standard;
        int highest = table.levels();
        if (standard.curveLevel() < 2
                || standard.curveLevel() > highest
                || standard.levels().stream().anyMatch(level -> level.level() > highest)) {
            throw new IllegalArgumentException("the standards ask for a level the " + highest + "-level scale lacks");
        }
        smoothed = SmoothedTrainee.of(fit, table, trainee);
        threshold = fit.psi().threshold(standard.curveLevel());
        caseMix = PsiLayout.array(fit.caseMix());
        double harder = 0;
        for (int x = 0; x < caseMix.length; x++) {
            harder += caseMix[x] * smoothed.point.gamma[x];
        }
        typical = harder;
    }

    CompetencyCurve write() {
        List<CurvePoint> points = new ArrayList<>();
        int steps = table.steps().size();
        double[][] variances = new double[smoothed.cases()][];
        for (int i = 0; i < smoothed.cases(); i++) {
            variances[i] = smoothed.variances(i);
            points.add(point(i, variances[i]));
        }
        List<StepCurve> curves = new ArrayList<>();
        WholeCase chances = new WholeCase(0, smoothed.point.assessmentVarianceOfAll);
        for (int s = 0; s < steps; s++) {
            curves.add(step(s, variances, chances));
        }
        Evidence evidence = evidence(variances);
        return new CompetencyCurve(
                trainee,
                CompetencyModel.VERSION,
                smoothed.work.effect[0],
                smoothed.work.effect[1],
                points,
                prior(),
                curves,
                evidence,
                readiness(evidence));
    }

    List<StepGap> gaps() {
        return new StepGaps(smoothed, standard.curveLevel(), threshold, typical).read();
    }

    private CurvePoint point(int i, double[] variance) {
        int at = smoothed.work.caseOffset + i;
        double plain = smoothed.level(i) - threshold;
        double level = plain - smoothed.panel.mean();
        double sd = sd(variance[1]);
        double half = CompetencyModel.halfBand(sd);
        return new CurvePoint(
                table.caseIds[at],
                table.caseOrder[at],
                table.experience[at],
                table.gapExcess[at],
                level,
                sd,
                level - half,
                level + half,
                plain,
                sd(variance[0]));
    }

    private static double sd(double variance) {
        return Math.sqrt(Math.max(variance, 0));
    }

    private StepCurve step(int s, double[][] variances, WholeCase chances) {
        List<StepCurve.Chance> points = new ArrayList<>();
        double harder = smoothed.point.beta[s] + threshold + typical;
        for (int i = 0; i < smoothed.cases(); i++) {
            double above = smoothed.stepLevel(i, s) - harder;
            double half = CompetencyModel.halfBand(sd(variances[i][2 + s]));
            points.add(new StepCurve.Chance(chances.one(above), chances.one(above - half), chances.one(above + half)));
        }
        int column = 2 + s;
        double effectVariance = smoothed.spread.covariance[column][column];
        return new StepCurve(table.steps().get(s), seen(s), smoothed.work.effect[column], sd(effectVariance), points);
    }

    private int seen(int s) {
        int seen = 0;
        for (int k = 0; k < smoothed.work.scores; k++) {
            seen += table.step[smoothed.work.scoreOffset + k] == s ? 1 : 0;
        }
        return seen;
    }

    /** Level of a trainee nobody has seen yet, at the first case. */
    private StepCurve.Chance prior() {
        double mean = -threshold - fit.panelSeverity();
        ModelPoint point = smoothed.point;
        int steps = Math.max(table.steps().size(), 1);
        double variance = point.levelVariance + point.stepVariance / steps + point.walkVariance(1, 0);
        double half = CompetencyModel.halfBand(Math.sqrt(variance));
        return new StepCurve.Chance(mean, mean - half, mean + half);
    }

    private Evidence evidence(double[][] variances) {
        int last = smoothed.cases() - 1;
        EvidenceJudge judge = new EvidenceJudge(fit, table, standard, smoothed.work.trainee);
        if (last < 0) {
            return judge.judge(1, 1);
        }
        double prior = smoothed.priorVariance(last, fit.supervisors().size());
        return judge.judge(variances[last][1], prior);
    }

    private List<Readiness> readiness(Evidence evidence) {
        List<String> known = standard.criticalSteps().stream()
                .filter(table.steps()::contains)
                .toList();
        int[] critical = known.stream().mapToInt(table.steps()::indexOf).toArray();
        ReadinessJudge judge = new ReadinessJudge(
                smoothed.point,
                smoothed.next(critical, caseMix),
                critical,
                known,
                ReadinessJudge.INFLATION,
                WholeCase.DRAWS);
        Readiness[] all = new Readiness[standard.levels().size()];
        Arrays.setAll(all, i -> judge.judge(standard.levels().get(i), standard.assurance(), evidence));
        return List.of(all);
    }
}
