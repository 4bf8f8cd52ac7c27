package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;

/** A trainee's history as it was known at the time, assessment by assessment. */
public final class RunningPath {

    private final List<RunningPoint> points;
    private final RunningEstimate state;

    private RunningPath(List<RunningPoint> points, RunningEstimate state) {
        this.points = List.copyOf(points);
        this.state = state;
    }

    /**
     * Runs the case-by-case update over all assessments of one trainee.
     *
     * @param fit population parameters and severities; the trainee's own share stays in, so for a strict "what was known
     *     then" give the fit of that time
     * @param trainee id; one without scores has no points
     */
    public static RunningPath of(PopulationFit fit, ScoreTable table, String trainee) {
        int place = table.trainees().indexOf(trainee);
        List<RunningPoint> points = new ArrayList<>();
        RunningEstimate state = new RunningEstimate(fit, table, place);
        int first = place < 0 ? 0 : table.caseStart[place];
        int end = place < 0 ? 0 : table.caseStart[place + 1];
        for (int i = first; i < end; i++) {
            state.advance(table.experience[i], table.gapExcess[i]);
            for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                state.observe(j);
                points.add(new RunningPoint(
                        table.assessmentIds[j], table.caseIds[i], state.level(), state.sd(), state.innovation()));
            }
        }
        return new RunningPath(points, state);
    }

    /** One point per assessment, oldest first. */
    public List<RunningPoint> points() {
        return points;
    }

    /** The state after the last assessment. */
    RunningEstimate state() {
        return state;
    }
}
