package org.scrubline.demo.plan;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.demo.plan.PlannedContest.Outcome;

/** Lets trainees contest a few sheets with a low level, most of them long ago. */
final class ContestDraw {

    private static final int UPHELD = 3;
    private static final int NOT_UPHELD = 2;
    private static final int OPEN = 1;
    private static final int LOW = 2;
    private static final int STEPS = 2;

    /** Decided by the end of the plan, or still within the time for a decision. */
    private static final Duration DECIDED = Duration.ofDays(60);

    private static final Duration RECENT = Duration.ofDays(35);
    private static final Duration SETTLED = Duration.ofDays(5);
    private static final Set<String> NOT_WITH = Set.of("T13", "T14");

    private final List<PlannedCase> cases;
    private final Instant end;
    private final double scale;
    private final Draws draws;

    ContestDraw(List<PlannedCase> cases, Instant end, double scale, Draws draws) {
        this.cases = new ArrayList<>(cases);
        this.end = end;
        this.scale = scale;
        this.draws = draws;
    }

    List<PlannedCase> draw() {
        contest(Outcome.UPHELD, UPHELD, one -> signedAt(one).isBefore(end.minus(DECIDED)));
        contest(Outcome.NOT_UPHELD, NOT_UPHELD, one -> signedAt(one).isBefore(end.minus(DECIDED)));
        contest(
                Outcome.OPEN,
                OPEN,
                one -> signedAt(one).isAfter(end.minus(RECENT)) && signedAt(one).isBefore(end.minus(SETTLED)));
        return cases;
    }

    private static Instant signedAt(PlannedCase one) {
        return one.sheets().get(0).signedAt();
    }

    private void contest(Outcome outcome, int ofAll, Predicate<PlannedCase> when) {
        List<PlannedCase> candidates = draws.shuffled(cases.stream()
                .filter(one ->
                        one.signed() && one.contest() == null && one.oddities().isEmpty())
                .filter(one -> !NOT_WITH.contains(one.trainee()))
                .filter(one ->
                        one.sheets().size() == 1 && one.sheets().get(0).events().isEmpty())
                .filter(one -> one.sheets().get(0).levels().containsValue(LOW))
                .filter(when)
                .toList());
        candidates.stream()
                .limit(Math.round(ofAll * scale))
                .forEach(one ->
                        cases.set(one.number(), one.with(new PlannedContest(outcome, steps(one), reviewer(one)))));
    }

    private static List<String> steps(PlannedCase one) {
        return one.sheets().get(0).levels().entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.naturalOrder()))
                .limit(STEPS)
                .map(Map.Entry::getKey)
                .toList();
    }

    private String reviewer(PlannedCase one) {
        return draws.pick(DemoCast.SUPERVISORS.stream()
                .map(Supervisor::id)
                .filter(id -> !id.equals(one.scorer()) && !id.equals(DemoCast.LEAVING))
                .filter(id -> !id.equals(DemoCast.CONFLICT_SUPERVISOR)
                        || !one.trainee().equals(DemoCast.CONFLICT_TRAINEE))
                .toList());
    }
}
