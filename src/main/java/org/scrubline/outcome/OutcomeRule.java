package org.scrubline.outcome;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.Mistake;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.platform.Refusal;

/**
 * What an entry has to say to be taken. A visit on any day since the operation is: its day decides the window, and a day
 * outside every window is shown as such, because a visit nobody could enter would be lost.
 *
 * @param today by the clock of the case's site
 */
record OutcomeRule(CaseOutcome outcome, LocalDate today) {

    /** How long before the operation a baseline may be measured (own default, no outside source). */
    private static final int BASELINE_MONTHS = 12;

    /** Every reason against an entry. */
    List<Refusal> against(Entering entering) {
        List<Refusal> reasons = new ArrayList<>();
        againstReplacing(entering).ifPresent(reasons::add);
        OutcomeEntry.Content content = entering.content();
        if (content instanceof Baseline baseline) {
            againstBaseline(baseline).ifPresent(reasons::add);
        } else if (content instanceof Visit visit) {
            againstVisit(visit, entering).ifPresent(reasons::add);
        } else if (content instanceof NoVisit none) {
            againstAbsence(none).ifPresent(reasons::add);
        }
        return reasons;
    }

    /** Only what holds can be put right, and only by what is of its kind; two people may have seen the same slip. */
    private Optional<Refusal> againstReplacing(Entering entering) {
        Integer replaces = entering.replaces();
        if (replaces == null) {
            return entering.content() instanceof Mistake
                    ? Optional.of(Refusal.of("outcome.refusal.replaces"))
                    : Optional.empty();
        }
        boolean fits = outcome.standing().stream()
                .filter(entry -> entry.ordinal() == replaces)
                .anyMatch(entry -> entering.content() instanceof Mistake
                        || entry.content().getClass() == entering.content().getClass());
        return fits ? Optional.empty() : Optional.of(Refusal.of("outcome.refusal.replaces"));
    }

    private Optional<Refusal> againstBaseline(Baseline baseline) {
        boolean before = !baseline.day().isAfter(outcome.operated());
        boolean recent = !baseline.day().isBefore(outcome.operated().minusMonths(BASELINE_MONTHS));
        return before && recent
                ? Optional.empty()
                : Optional.of(Refusal.at("day", "outcome.refusal.baseline-day", BASELINE_MONTHS));
    }

    private Optional<Refusal> againstVisit(Visit visit, Entering entering) {
        if (visit.day().isBefore(outcome.operated()) || visit.day().isAfter(today)) {
            return Optional.of(Refusal.at("day", "outcome.refusal.visit-day"));
        }
        boolean twice = outcome.visits().stream()
                .filter(one -> !Objects.equals(one.entry().ordinal(), entering.replaces()))
                .anyMatch(one -> one.visit().day().equals(visit.day()));
        return twice ? Optional.of(Refusal.at("day", "outcome.refusal.same-day")) : Optional.empty();
    }

    private Optional<Refusal> againstAbsence(NoVisit none) {
        if (none.since().isBefore(outcome.operated()) || none.since().isAfter(today)) {
            return Optional.of(Refusal.at("since", "outcome.refusal.since"));
        }
        if (outcome.visits().stream().anyMatch(one -> one.window() == none.window())) {
            return Optional.of(Refusal.at("window", "outcome.refusal.seen"));
        }
        boolean early =
                none.absence() != Absence.LOST && today.isBefore(none.window().from(outcome.operated()));
        return early ? Optional.of(Refusal.at("window", "outcome.refusal.not-due")) : Optional.empty();
    }
}
