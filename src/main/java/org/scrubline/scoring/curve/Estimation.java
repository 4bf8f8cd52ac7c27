package org.scrubline.scoring.curve;

import java.util.Arrays;

/** Which population parameters the scores at hand decide. */
public enum Estimation {
    /** None: all as given. */
    GIVEN,
    /** Step difficulties and supervisors' habits; thresholds, gains and variances as given. For small programmes. */
    DIFFICULTY,
    /** All. */
    ALL;

    private static final int LEAST_ASSESSMENTS = 300;
    private static final int LEAST_TRAINEES = 6;
    private static final int LEAST_SUPERVISORS = 4;

    /**
     * What a programme may decide by itself: all from 300 assessments, 6 trainees and 4 supervisors on, each with a
     * score; before that thresholds and variances stay as shipped, because a few trainees cannot tell a steep scale
     * from large differences.
     *
     * @param table all scores of one procedure in one programme; may be empty
     * @return {@link #ALL} or {@link #DIFFICULTY}
     */
    public static Estimation allowedFor(ScoreTable table) {
        long active = Arrays.stream(table.supervisor).distinct().count();
        boolean enough = table.assessments() >= LEAST_ASSESSMENTS
                && table.trainees().size() >= LEAST_TRAINEES
                && active >= LEAST_SUPERVISORS;
        return enough ? ALL : DIFFICULTY;
    }

    boolean frees(String group) {
        return this == ALL
                || (this == DIFFICULTY && (group.equals("beta") || group.equals("rho") || group.equals("hal")));
    }
}
