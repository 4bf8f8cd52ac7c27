package org.scrubline.outcome;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.Part;
import org.scrubline.outcome.FiltrationCase.Operator;
import org.scrubline.outcome.OutcomeReport.TraineeOutcomes;
import org.scrubline.outcome.ProgrammeOutcomes.JudgedCase;
import org.scrubline.rubric.Band;

/**
 * Counts judged cases.
 *
 * @param lowAt mmHg at which an early pressure is too low
 */
record OutcomeCounts(List<JudgedCase> cases, int lowAt) {

    SuccessCount all() {
        SuccessCount count = SuccessCount.NONE;
        for (JudgedCase one : cases) {
            count = count.and(one.judgement());
        }
        return count;
    }

    /** By name, since any other order would be a league table. */
    List<TraineeOutcomes> trainees() {
        Map<UUID, TraineeOutcomes> found = new LinkedHashMap<>();
        for (JudgedCase one : cases) {
            one.of().operators().stream()
                    .filter(Operator::operated)
                    .forEach(operator -> found.merge(operator.id(), first(one, operator), OutcomeCounts::together));
        }
        return found.values().stream()
                .sorted(Comparator.comparing(TraineeOutcomes::name).thenComparing(TraineeOutcomes::id))
                .toList();
    }

    private static TraineeOutcomes first(JudgedCase one, Operator operator) {
        return new TraineeOutcomes(
                operator.id(),
                operator.name(),
                SuccessCount.NONE.and(one.judgement()),
                operator.part() == Part.WHOLE_CASE ? 1 : 0,
                Map.of(one.of().band(), 1));
    }

    private static TraineeOutcomes together(TraineeOutcomes one, TraineeOutcomes other) {
        Map<Band, Integer> bands = new EnumMap<>(one.bands());
        other.bands().forEach((band, cases) -> bands.merge(band, cases, Integer::sum));
        return new TraineeOutcomes(
                one.id(), one.name(), one.count().plus(other.count()), one.whole() + other.whole(), bands);
    }

    Map<EarlyEvent, Tally> early() {
        Map<EarlyEvent, Tally> tallies = new EnumMap<>(EarlyEvent.class);
        for (EarlyEvent event : EarlyEvent.values()) {
            Tally tally = Tally.NONE;
            for (JudgedCase one : cases) {
                Optional<Boolean> found = event.of(one.outcome(), lowAt);
                tally = found.isPresent() ? tally.and(found.get()) : tally;
            }
            tallies.put(event, tally);
        }
        return tallies;
    }

    Map<Visit.Care, Tally> care() {
        Map<Visit.Care, Tally> tallies = new EnumMap<>(Visit.Care.class);
        for (Visit.Care care : Visit.Care.values()) {
            Tally tally = Tally.NONE;
            for (CaseOutcome outcome : seen()) {
                tally = tally.and(outcome.visits().stream()
                        .anyMatch(one -> one.visit().care().contains(care)));
            }
            tallies.put(care, tally);
        }
        return tallies;
    }

    Tally operatorAlone() {
        Tally tally = Tally.NONE;
        for (CaseOutcome outcome : seen()) {
            tally = tally.and(outcome.operatorAlone());
        }
        return tally;
    }

    private List<CaseOutcome> seen() {
        return cases.stream()
                .map(JudgedCase::outcome)
                .filter(outcome -> !outcome.visits().isEmpty())
                .toList();
    }
}
