package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;

/** A trainee's history as it was known at the time, assessment by assessment. */
public final class RunningPath {

    private RunningPath() {}

    /**
     * Runs the case-by-case update over all assessments of one trainee.
     *
     * @param fit population parameters and severities; the trainee's own share stays in, so for a strict "what was known
     *     then" give the fit of that time
     * @return one point per assessment, oldest first; empty for a trainee without scores
     */
    public static List<RunningPoint> of(PopulationFit fit, ScoreTable table, String trainee) {
        List<RunningPoint> path = new ArrayList<>();
        run(fit, table, table.trainees().indexOf(trainee), path);
        return path;
    }

    /** The state after the last assessment; fills the path on the way. */
    static RunningEstimate run(PopulationFit fit, ScoreTable table, int trainee, List<RunningPoint> path) {
        RunningEstimate estimate = new RunningEstimate(fit, table, trainee);
        for (int i = trainee < 0 ? 0 : table.caseStart[trainee];
                trainee >= 0 && i < table.caseStart[trainee + 1];
                i++) {
            estimate.advance(table.experience[i], table.gapExcess[i]);
            for (int j = table.assessmentStart[i]; j < table.assessmentStart[i + 1]; j++) {
                estimate.observe(j);
                path.add(new RunningPoint(
                        table.assessmentIds[j],
                        table.caseIds[i],
                        estimate.level(),
                        estimate.sd(),
                        estimate.innovation()));
            }
        }
        return estimate;
    }
}
