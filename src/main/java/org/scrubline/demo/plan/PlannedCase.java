package org.scrubline.demo.plan;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.rubric.Band;

/**
 * One case of the plan with all that was said about it.
 *
 * @param number place in time among all cases, from 0
 * @param rubricVersion version of the procedure's rubric it is scored with
 * @param sheets the sheet asked for first, then perhaps a second scorer's; each as far as {@code status} says
 * @param selfScores levels by step as the trainee saw them; empty when none were given
 * @param contest about the first sheet; null when there is none
 */
public record PlannedCase(
        int number,
        String reference,
        String trainee,
        String site,
        String procedure,
        String rubricVersion,
        Band band,
        List<String> factors,
        Eye eye,
        Instant endedAt,
        Part part,
        Supervision supervision,
        CaseStatus status,
        List<PlannedSheet> sheets,
        Map<String, Integer> selfScores,
        Set<Oddity> oddities,
        @Nullable PlannedContest contest) {

    public PlannedCase {
        factors = List.copyOf(factors);
        sheets = List.copyOf(sheets);
        selfScores = Collections.unmodifiableMap(new LinkedHashMap<>(selfScores));
        oddities = Set.copyOf(oddities);
    }

    public boolean signed() {
        return status == CaseStatus.SIGNED;
    }

    /** Who was asked to score. */
    public String scorer() {
        return sheets.get(0).scorer();
    }

    /**
     * What stands on the first sheet once a contest is upheld: the reviewer puts each contested step one level higher.
     */
    public Map<String, StepState> reviewedSteps() {
        Map<String, StepState> steps = new LinkedHashMap<>(sheets.get(0).steps());
        if (contest != null && contest.outcome() == PlannedContest.Outcome.UPHELD) {
            contest.steps().forEach(code -> steps.computeIfPresent(code, (step, state) -> oneHigher(state)));
        }
        return steps;
    }

    /** The same, contested. */
    PlannedCase with(PlannedContest other) {
        return new PlannedCase(
                number,
                reference,
                trainee,
                site,
                procedure,
                rubricVersion,
                band,
                factors,
                eye,
                endedAt,
                part,
                supervision,
                status,
                sheets,
                selfScores,
                oddities,
                other);
    }

    private static StepState oneHigher(StepState state) {
        return state instanceof StepState.Scored scored && scored.level() < 5
                ? new StepState.Scored(scored.level() + 1)
                : state;
    }
}
