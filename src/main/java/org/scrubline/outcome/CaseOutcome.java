package org.scrubline.outcome;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.Mistake;
import org.scrubline.outcome.OutcomeEntry.NoVisit;

/**
 * What holds about the outcome of one case: the entries nothing put right.
 *
 * @param operated day of the operation by the clock of its site
 * @param standing in the order they were entered
 */
public record CaseOutcome(LocalDate operated, List<OutcomeEntry> standing) {

    public CaseOutcome {
        standing = List.copyOf(standing);
    }

    /**
     * Reads all entries of a case.
     *
     * @param entries also those put right, in any order
     */
    public static CaseOutcome of(LocalDate operated, List<OutcomeEntry> entries) {
        Set<Integer> replaced = entries.stream()
                .flatMap(entry -> Optional.ofNullable(entry.replaces()).stream())
                .collect(Collectors.toSet());
        return new CaseOutcome(
                operated,
                entries.stream()
                        .filter(entry -> !replaced.contains(entry.ordinal()) && !(entry.content() instanceof Mistake))
                        .sorted(Comparator.comparingInt(OutcomeEntry::ordinal))
                        .toList());
    }

    /** A visit in its place. */
    public record Placed(OutcomeEntry entry, Visit visit, FollowUp window, boolean outside) {}

    /** Before the operation, when it is known. */
    public Optional<Baseline> baseline() {
        return baselineEntry().map(entry -> (Baseline) entry.content());
    }

    Optional<OutcomeEntry> baselineEntry() {
        return standing.stream()
                .filter(entry -> entry.content() instanceof Baseline)
                .reduce((one, newer) -> newer);
    }

    /** Every visit, the earliest first; each belongs to one window. */
    public List<Placed> visits() {
        return standing.stream()
                .filter(entry -> entry.content() instanceof Visit)
                .map(this::place)
                .sorted(Comparator.comparing((Placed one) -> one.visit().day())
                        .thenComparing(one -> one.entry().ordinal()))
                .toList();
    }

    private Placed place(OutcomeEntry entry) {
        Visit visit = (Visit) entry.content();
        FollowUp window = FollowUp.nearest(operated, visit.day());
        return new Placed(entry, visit, window, !window.takes(operated, visit.day()));
    }

    /** What is said about the absence of a visit in a window. */
    Optional<OutcomeEntry> absence(FollowUp window) {
        return standing.stream()
                .filter(entry -> entry.content() instanceof NoVisit none && none.window() == window)
                .reduce((one, newer) -> newer);
    }

    /** Every window with the one state it has on a day. */
    public List<WindowState> windows(LocalDate today) {
        List<WindowState> states = new ArrayList<>();
        boolean lost = false;
        for (FollowUp window : FollowUp.values()) {
            Optional<Placed> seen = seen(window);
            Optional<OutcomeEntry> absence = absence(window);
            WindowState.State state = state(window, today, lost);
            states.add(new WindowState(window, state, seen.orElse(null), absence.orElse(null)));
            lost = state == WindowState.State.LOST || (lost && seen.isEmpty());
        }
        return states;
    }

    private WindowState.State state(FollowUp window, LocalDate today, boolean lost) {
        if (seen(window).isPresent()) {
            return WindowState.State.SEEN;
        }
        Optional<Absence> absence = absence(window).map(entry -> ((NoVisit) entry.content()).absence());
        if (absence.isPresent()) {
            return WindowState.State.valueOf(absence.get().name());
        }
        if (lost) {
            return WindowState.State.LOST;
        }
        if (today.isBefore(window.from(operated))) {
            return WindowState.State.NOT_DUE;
        }
        return today.isAfter(window.until(operated)) ? WindowState.State.OVERDUE : WindowState.State.DUE;
    }

    /** The visit that counts for a window: one inside it before one outside, then the one nearest to its day. */
    private Optional<Placed> seen(FollowUp window) {
        return visits().stream()
                .filter(one -> one.window() == window)
                .min(Comparator.comparing(Placed::outside)
                        .thenComparingLong(one -> Math.abs(ChronoUnit.DAYS.between(
                                window.due(operated), one.visit().day()))));
    }

    /** Whether every visit there is was judged by the one who operated alone. */
    public boolean operatorAlone() {
        List<Placed> visits = visits();
        return !visits.isEmpty() && visits.stream().allMatch(one -> one.visit().seenBy() == Visit.SeenBy.OPERATOR);
    }

    /** Visits from the window of month 3 on, from which success is judged. */
    List<Visit> judged() {
        LocalDate from = FollowUp.M3.from(operated);
        return visits().stream()
                .map(Placed::visit)
                .filter(visit -> !visit.day().isBefore(from))
                .toList();
    }
}
