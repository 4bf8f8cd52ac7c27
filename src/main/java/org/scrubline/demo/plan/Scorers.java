package org.scrubline.demo.plan;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scrubline.demo.plan.DemoCast.Supervisor;

/** Asks a supervisor of the place for each case, and says how long the score takes. */
final class Scorers {

    private static final String VISITING = "S09";
    private static final int VISITED = 8;

    /** Trainees whose scorers are part of the story. */
    private static final Map<String, Map<String, Double>> OWN_SHARES = Map.of(
            "T03", Map.of("S03", .62, "S05", .26, "S08", .12),
            "T14", Map.of("S03", .55, "S05", .45, "S04", 1.));

    private static final Set<String> NEVER_VISITED = Set.of("T03", "T13", "T14");
    private static final double DELAY_SD = .65;
    private static final double FORGOTTEN = .025;
    private static final Duration SOONEST = Duration.ofMinutes(20);

    private final double scale;
    private final Draws draws;

    Scorers(double scale, Draws draws) {
        this.scale = scale;
        this.draws = draws;
    }

    List<Asked> draw(List<Operation> operations) {
        Set<Integer> visited = visited(operations);
        List<Asked> asked = new ArrayList<>();
        for (Operation operation : operations) {
            Supervisor scorer =
                    visited.contains(operation.number()) ? DemoCast.supervisor(VISITING) : at(operation.slot());
            asked.add(new Asked(operation, scorer.id(), delay(scorer), CaseStatus.SIGNED, null));
        }
        return asked;
    }

    private Set<Integer> visited(List<Operation> operations) {
        List<Integer> open = operations.stream()
                .filter(one -> !NEVER_VISITED.contains(one.slot().trainee()))
                .map(Operation::number)
                .toList();
        int visits = Math.min(open.size(), (int) Math.round(VISITED * scale));
        return new HashSet<>(draws.shuffled(open).subList(0, visits));
    }

    private Supervisor at(Slot slot) {
        List<Supervisor> here = DemoCast.SUPERVISORS.stream()
                .filter(one -> one.site().equals(slot.site()))
                .toList();
        double[] weights = here.stream().mapToDouble(one -> weight(one, slot)).toArray();
        return here.get(draws.weighted(weights));
    }

    private static double weight(Supervisor supervisor, Slot slot) {
        boolean gone = supervisor.id().equals(DemoCast.LEAVING) && slot.month() > DemoCast.LEAVING_MONTH;
        boolean conflict = supervisor.id().equals(DemoCast.CONFLICT_SUPERVISOR)
                && slot.trainee().equals(DemoCast.CONFLICT_TRAINEE);
        if (gone || conflict) {
            return 0;
        }
        Map<String, Double> own = OWN_SHARES.get(slot.trainee());
        return own == null ? supervisor.share() : own.getOrDefault(supervisor.id(), 0.);
    }

    private Duration delay(Supervisor scorer) {
        double hours = scorer.hours() * StrictMath.exp(draws.normal(DELAY_SD));
        double forgotten = 80 + 140 * draws.uniform();
        boolean forgets = draws.chance(FORGOTTEN);
        Duration delay = Duration.ofMinutes(Math.round((forgets ? Math.max(hours, forgotten) : hours) * 60));
        return delay.compareTo(SOONEST) < 0 ? SOONEST : delay;
    }
}
