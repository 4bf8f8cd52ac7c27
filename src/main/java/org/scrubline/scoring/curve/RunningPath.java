package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A trainee's history as it was known at the time, assessment by assessment; see {@link #extend} for the update when
 * one more case is signed. The state is (level, gain, step effects, trainee × supervisor effects) with a joint normal
 * law, moved by four Newton steps an assessment. Against the full smoothing of the same scores the level differs by .2
 * posterior standard deviations on average. Not safe for use by several threads.
 */
public final class RunningPath {

    private final String trainee;
    private final List<RunningPoint> points = new ArrayList<>();
    private final RunningEstimate state;

    private RunningPath(PopulationFit fit, ScoreTable table, String trainee) {
        this.trainee = trainee;
        state = new RunningEstimate(fit, table, table.trainees().indexOf(trainee));
    }

    /**
     * Runs the case-by-case update over all assessments of one trainee.
     *
     * @param fit population parameters and severities; the trainee's own share stays in, so for a strict "what was
     *     known then" give the fit of that time
     * @param table scores that include the trainee's
     * @param trainee id; one without scores has no points
     * @return the history
     * @throws IllegalArgumentException when levels or complexity values differ from the fit's
     */
    public static RunningPath of(PopulationFit fit, ScoreTable table, String trainee) {
        RunningPath path = new RunningPath(fit, table, trainee);
        path.run(table);
        return path;
    }

    /**
     * Counts the assessments that were added since, at a cost that does not depend on those counted before, but for
     * walking past them. The past is compared by the ids of its assessments alone: other scores under the same id stay
     * unnoticed, and so does a past that has only lost its end.
     *
     * @param longer a table that holds what was counted so far and, after it, something new
     * @throws IllegalArgumentException when ids of the past differ, as after a void or a late entry before its end, or
     *     the steps differ; run it anew then
     */
    public void extend(ScoreTable longer) {
        state.bind(longer, longer.trainees().indexOf(trainee));
        run(longer);
    }

    private void run(ScoreTable table) {
        int place = table.trainees().indexOf(trainee);
        int first = place < 0 ? 0 : table.caseStart[place];
        int end = place < 0 ? 0 : table.caseStart[place + 1];
        int counted = points.size();
        int position = 0;
        String caseBefore = counted == 0 ? "" : points.get(counted - 1).caseId();
        for (int i = first; i < end; i++) {
            for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                if (position++ < counted) {
                    same(points.get(position - 1), table.assessmentIds[j]);
                    continue;
                }
                if (points.isEmpty() || !table.caseIds[i].equals(caseBefore)) {
                    state.advance(table.experience[i], table.gapExcess[i]);
                    caseBefore = table.caseIds[i];
                }
                state.observe(j);
                points.add(new RunningPoint(
                        table.assessmentIds[j], table.caseIds[i], state.level(), state.sd(), state.innovation()));
            }
        }
    }

    private static void same(RunningPoint counted, String assessment) {
        if (!counted.assessment().equals(assessment)) {
            throw new IllegalArgumentException("the history was changed at assessment " + assessment + "; run it anew");
        }
    }

    /** {@return one point per assessment, oldest first; a view that grows with {@link #extend}} */
    public List<RunningPoint> points() {
        return Collections.unmodifiableList(points);
    }

    /** The state after the last assessment. */
    RunningEstimate state() {
        return state;
    }
}
