package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * Where one trainee's cases, assessments and scores lie in the table, and the columns of the trainee's border. Border
 * columns, B in all: 0 level, 1 gain, 2..1+S own step effects, then one per supervisor met; where border and severities
 * are combined, the supervisor's severity is counted negatively in that last column.
 */
abstract class TraineeSlice {

    final ScoreTable table;
    final int trainee;
    final int steps;
    final int cases;
    final int caseOffset;
    final int assessments;
    final int assessmentOffset;
    final int scoreOffset;
    final int scores;

    /** Supervisors this trainee met: index in the table, and in the block that solves them together. */
    final int[] supervisors;

    final int[] blockSupervisors;

    /** Column of the supervisor of each assessment among {@link #supervisors}. */
    final int[] pair;

    final int border;
    final int pairColumn;

    /** @param trainee place in the table, or -1 for one without scores */
    TraineeSlice(ScoreTable table, int trainee) {
        this.table = table;
        this.trainee = trainee;
        steps = table.steps.size();
        caseOffset = trainee < 0 ? 0 : table.caseStart[trainee];
        cases = trainee < 0 ? 0 : table.caseStart[trainee + 1] - caseOffset;
        assessmentOffset = table.assessmentStart[caseOffset];
        assessments = table.assessmentStart[caseOffset + cases] - assessmentOffset;
        scoreOffset = table.scoreStart[assessmentOffset];
        scores = table.scoreStart[assessmentOffset + assessments] - scoreOffset;
        int[] met = Arrays.copyOfRange(table.supervisor, assessmentOffset, assessmentOffset + assessments);
        supervisors = Arrays.stream(met).sorted().distinct().toArray();
        blockSupervisors = supervisors.clone();
        pair = new int[assessments];
        for (int j = 0; j < assessments; j++) {
            pair[j] = Arrays.binarySearch(supervisors, met[j]);
        }
        pairColumn = 2 + steps;
        border = pairColumn + supervisors.length;
    }
}
