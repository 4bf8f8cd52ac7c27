package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;

/**
 * Early signals of one trainee. {@code BELOW_EXPECTATION} is a one-sided cumulative sum of standardised innovations
 * (allowance .5, limit 4: one false signal in about 336 assessments, common tables of control charts, from memory; .30
 * per 100 measured); {@code DROP} compares the case-by-case level with its best three to fifteen assessments earlier.
 */
public final class TraineeSignals {

    private static final double ALLOWANCE = 0.5;
    private static final double SUM_LIMIT = 4;
    private static final int DROP_FROM = 15;
    private static final int DROP_TO = 3;
    private static final double DROP_LEAST = 0.3;
    private static final double DROP_SDS = 1.0;
    private static final int WINDOW = 20;
    private static final int SELDOM = 3;
    private static final int FAR_CASES = 10;
    private static final double FAR_CHANCE = 0.05;

    private TraineeSignals() {}

    /**
     * Signals of one trainee, none when there is nothing to look at.
     *
     * @param table the scores of curve and path
     * @param curve the trainee's curve from the same table
     * @param path the trainee's history from the same fit and table
     * @return at most one flag of the first two kinds, then one a standard or step
     */
    public static List<Flag> of(ScoreTable table, CompetencyCurve curve, RunningPath path) {
        return of(table, curve, path.points());
    }

    static List<Flag> of(ScoreTable table, CompetencyCurve curve, List<RunningPoint> path) {
        List<Flag> flags = new ArrayList<>();
        int trainee = table.trainees().indexOf(curve.trainee());
        if (trainee < 0) {
            return flags;
        }
        belowExpectation(path, flags);
        drop(path, flags);
        standardFar(curve, flags);
        seldomSeen(table, trainee, flags);
        return flags;
    }

    private static void belowExpectation(List<RunningPoint> path, List<Flag> flags) {
        double sum = 0;
        String since = "";
        for (RunningPoint p : path) {
            double next = Math.max(0, sum - p.innovation() - ALLOWANCE);
            since = sum == 0 ? p.caseId() : since;
            sum = next;
            if (sum > SUM_LIMIT) {
                flags.add(new Flag(Flag.Kind.BELOW_EXPECTATION, "", sum, SUM_LIMIT, since));
                return;
            }
        }
    }

    private static void drop(List<RunningPoint> path, List<Flag> flags) {
        for (int i = DROP_TO; i < path.size(); i++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int k = Math.max(0, i - DROP_FROM); k <= i - DROP_TO; k++) {
                best = Math.max(best, path.get(k).level());
            }
            double fall = best - path.get(i).level();
            if (fall > DROP_LEAST && fall > DROP_SDS * path.get(i).sd()) {
                flags.add(new Flag(
                        Flag.Kind.DROP, "", fall, DROP_LEAST, path.get(i).caseId()));
                return;
            }
        }
    }

    private static void standardFar(CompetencyCurve curve, List<Flag> flags) {
        for (Readiness readiness : curve.readiness()) {
            double within = readiness.forecast().within60();
            if (curve.points().size() >= FAR_CASES && readiness.forecast().shown() && within < FAR_CHANCE) {
                flags.add(new Flag(Flag.Kind.STANDARD_FAR, readiness.standard().code(), within, FAR_CHANCE, ""));
            }
        }
    }

    private static void seldomSeen(ScoreTable table, int trainee, List<Flag> flags) {
        int end = table.caseStart[trainee + 1];
        if (end - table.caseStart[trainee] < WINDOW) {
            return;
        }
        int[] seen = new int[table.steps().size()];
        int first = table.scoreStart[table.assessmentStart[end - WINDOW]];
        for (int k = first; k < table.scoreStart[table.assessmentStart[end]]; k++) {
            seen[table.step[k]]++;
        }
        for (int s = 0; s < seen.length; s++) {
            if (seen[s] < SELDOM) {
                flags.add(new Flag(Flag.Kind.STEP_SELDOM_SEEN, table.steps().get(s), seen[s], SELDOM, ""));
            }
        }
    }
}
