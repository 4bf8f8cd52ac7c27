package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Carries every score of one smoothed trainee over to the typical case, component by component. */
final class StepGaps {

    private static final int STAGES = StepGap.Part.values().length + 1;

    private final SmoothedTrainee smoothed;
    private final int level;
    private final double threshold;
    private final double typical;
    private final WholeCase ordinaryDay;

    /** Per step and stage: sum over the scores of the share or chance; stage 0 is raw. */
    private final double[][] sums;

    private final int[] seen;

    /**
     * @param level the curve's level
     * @param threshold its threshold, of a supervisor of usual range
     * @param typical location lost in the programme's mean case mix
     */
    StepGaps(SmoothedTrainee smoothed, int level, double threshold, double typical) {
        this.smoothed = smoothed;
        this.level = level;
        this.threshold = threshold;
        this.typical = typical;
        ordinaryDay = new WholeCase(0, smoothed.point.assessmentVarianceOfAll);
        sums = new double[smoothed.work.steps][STAGES];
        seen = new int[smoothed.work.steps];
    }

    /** Steps with a score, in the table's order. */
    List<StepGap> read() {
        TraineeWork work = smoothed.work;
        for (int i = 0; i < work.cases; i++) {
            int first = work.table.assessmentStart[work.caseOffset + i];
            int end = work.table.assessmentStart[work.caseOffset + i + 1];
            for (int a = first; a < end; a++) {
                for (int k = work.table.scoreStart[a]; k < work.table.scoreStart[a + 1]; k++) {
                    add(i, a, k);
                }
            }
        }
        List<StepGap> gaps = new ArrayList<>();
        for (int s = 0; s < seen.length; s++) {
            if (seen[s] > 0) {
                gaps.add(gap(s));
            }
        }
        return gaps;
    }

    /** Score k of assessment a of case i. */
    private void add(int i, int a, int k) {
        TraineeWork work = smoothed.work;
        int step = work.table.step[k];
        int j = a - work.assessmentOffset;
        double own = smoothed.stepLevel(i, step) - smoothed.point.beta[step];
        double scorer = scorer(a, work.pair[j]);
        double usualScorer = -threshold;
        double newest = smoothed.stepLevel(work.cases - 1, step) - smoothed.point.beta[step];
        double day = work.overall[j];
        double[] sum = sums[step];
        seen[step]++;
        sum[0] += ScoreTable.lowest(work.table.span[k]) >= level ? 1 : 0;
        sum[1] += logistic(own + scorer + day - complexity(a));
        sum[2] += logistic(own + scorer + day - typical);
        sum[3] += logistic(own + usualScorer + day - typical);
        sum[4] += ordinaryDay.one(newest + usualScorer - typical);
    }

    /** What the supervisor of an assessment adds to the location, threshold included, against the panel's mean severity. */
    private double scorer(int assessment, int pair) {
        ModelPoint point = smoothed.point;
        int row = smoothed.work.table.supervisor[assessment] * point.stride;
        double seesTrainee = smoothed.work.effect[smoothed.work.pairColumn + pair];
        return seesTrainee - (smoothed.severity[pair] - smoothed.panel.mean()) - point.threshold[row + level];
    }

    private double complexity(int assessment) {
        double[] gamma = smoothed.point.gamma;
        double sum = 0;
        for (int x = 0; x < gamma.length; x++) {
            sum += gamma[x] * smoothed.work.table.complexity[assessment * gamma.length + x];
        }
        return sum;
    }

    private StepGap gap(int s) {
        Map<StepGap.Part, Double> parts = new EnumMap<>(StepGap.Part.class);
        int stage = 0;
        for (StepGap.Part part : StepGap.Part.values()) {
            parts.put(part, (sums[s][stage + 1] - sums[s][stage]) / seen[s]);
            stage++;
        }
        return new StepGap(
                smoothed.work.table.steps().get(s),
                seen[s],
                sums[s][0] / seen[s],
                sums[s][STAGES - 1] / seen[s],
                parts);
    }

    private static double logistic(double location) {
        return 1 / (1 + Math.exp(-location));
    }
}
