package org.scrubline.demo.plan;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.casework.Part;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CaseBand;
import org.scrubline.scoring.curve.CaseContext;
import org.scrubline.scoring.curve.ObservedScore;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.ScoreTableBuilder;

/**
 * The signed scores of a plan as the competency model reads them, without a database: by the rules the product follows
 * for its own records. Trainees and supervisors go by their ids, such as T05 and S01; an assessment by the number of the
 * case and its scorer.
 */
public final class PlanScores {

    private PlanScores() {}

    /** The counted scores of a procedure, trainee by trainee, each in the order of the cases. */
    public static List<ObservedScore> of(DemoPlan plan, String procedure) {
        List<ObservedScore> scores = new ArrayList<>();
        Map<String, Integer> before = new HashMap<>();
        Map<String, Instant> previous = new HashMap<>();
        for (PlannedCase one : plan.cases()) {
            if (one.signed() && one.part() == Part.WHOLE_CASE && one.procedure().equals(procedure)) {
                int done = before.computeIfAbsent(one.trainee(), id -> declared(id, procedure));
                CaseContext context = CaseContext.of(
                        String.valueOf(one.number()),
                        one.endedAt(),
                        done,
                        CaseBand.valueOf(one.band().name()),
                        previous.get(one.trainee()));
                one.sheets().forEach(sheet -> add(scores, one, sheet, context));
                before.put(one.trainee(), done + 1);
                previous.put(one.trainee(), one.endedAt());
            }
        }
        return scores;
    }

    /** The same as the engine's table. */
    public static ScoreTable table(DemoPlan plan, String procedure) {
        List<ObservedScore> scores = of(plan, procedure);
        List<String> steps =
                scores.stream().map(ObservedScore::step).distinct().sorted().toList();
        ScoreTableBuilder builder = new ScoreTableBuilder(Step.LEVELS, steps, List.of());
        scores.forEach(builder::add);
        return builder.build();
    }

    /** Cases of a procedure a trainee declared from before the programme. */
    public static int declared(String trainee, String procedure) {
        return procedure.equals(Procedures.TRAB_FORNIX)
                ? DemoCast.trainee(trainee).earlier()
                : 0;
    }

    private static void add(List<ObservedScore> scores, PlannedCase one, PlannedSheet sheet, CaseContext context) {
        boolean first = sheet.scorer().equals(one.scorer());
        Map<String, StepState> steps = first ? one.reviewedSteps() : sheet.steps();
        PlannedSheet.levels(steps)
                .forEach((step, level) -> scores.add(new ObservedScore(
                        one.number() + "-" + sheet.scorer(), one.trainee(), signer(one, sheet), context, step, level)));
    }

    /** After an upheld contest the reviewer signs in place of the scorer. */
    private static String signer(PlannedCase one, PlannedSheet sheet) {
        PlannedContest contest = one.contest();
        return contest != null && contest.outcome() == PlannedContest.Outcome.UPHELD
                ? contest.reviewer()
                : sheet.scorer();
    }
}
