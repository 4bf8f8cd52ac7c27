package org.scrubline.progress;

import org.scrubline.scoring.control.LearningCurveCusum;

/**
 * Rates, planned number of cases and limit of the chart of critical events, fixed before the cases are seen. A limit
 * belongs to its planned number: it keeps the probability of a false signal within that many cases near 10 %.
 *
 * @param plannedCases the number of cases the limit is made for
 * @param limit height of the signal
 */
public record ChartDesign(int plannedCases, double limit) {

    /** Share of cases with a critical event that is acceptable. */
    public static final double ACCEPTABLE = 0.10;

    /** Share of cases with a critical event that must not pass. */
    public static final double UNACCEPTABLE = 0.30;

    /** Probability of a signal within the planned cases although the unacceptable share holds. */
    public static final double FALSE_SIGNAL = 0.10;

    private static final int PLAN_30 = 30;
    private static final double LIMIT_30 = 2.99;
    private static final double LIMIT_60 = 3.73;

    /**
     * The design for this many cases: planned in multiples of the programme's number. For 30 and 60 the limits are those of the planning table of 4000
     * simulated series a row; otherwise the smallest limit with the false-signal probability computed exactly.
     *
     * @param cases 0 or more
     * @param plan number of cases planned for, 1 or more
     */
    public static ChartDesign forCases(int cases, int plan) {
        int planned = plan * Math.max(1, (cases + plan - 1) / plan);
        if (planned == PLAN_30) {
            return new ChartDesign(planned, LIMIT_30);
        }
        return new ChartDesign(
                planned,
                planned == 2 * PLAN_30
                        ? LIMIT_60
                        : LearningCurveCusum.smallestLimit(ACCEPTABLE, UNACCEPTABLE, planned, FALSE_SIGNAL));
    }

    LearningCurveCusum cusum() {
        return new LearningCurveCusum(ACCEPTABLE, UNACCEPTABLE, limit);
    }

    /** The fewest cases in a row without a critical event that reach the limit. */
    public int shortestCleanRun() {
        return cusum().shortestCleanRun();
    }
}
