package org.scrubline.outcome;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.outcome.FiltrationCase.Operator;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredProgrammeOutcomes implements ProgrammeOutcomes {

    private final OutcomeProgrammes programmes;
    private final Settings settings;
    private final Clock clock;

    StoredProgrammeOutcomes(OutcomeProgrammes programmes, Settings settings, Clock clock) {
        this.programmes = programmes;
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public OutcomeReport read(SignedIn who, Wish wish) {
        return reading(who, wish).report();
    }

    @Override
    public TraineeOutcomeCases cases(SignedIn who, Wish wish, UUID trainee) {
        Reading reading = reading(who, wish);
        List<JudgedCase> own = reading.judged.stream()
                .filter(one -> operators(one).anyMatch(operator -> operator.id().equals(trainee)))
                .sorted(Comparator.comparing((JudgedCase one) -> one.of().endedAt())
                        .reversed())
                .toList();
        String name = own.stream()
                .flatMap(StoredProgrammeOutcomes::operators)
                .filter(operator -> operator.id().equals(trainee))
                .map(Operator::name)
                .findFirst()
                .orElseThrow(NotFound::new);
        OutcomeReport report = reading.report();
        return new TraineeOutcomeCases(
                report, name, who.has(Role.DIRECTOR, report.programme().id()), own);
    }

    private static Stream<Operator> operators(JudgedCase one) {
        return one.of().operators().stream().filter(Operator::operated);
    }

    private Reading reading(SignedIn who, Wish wish) {
        List<Programme> open = programmes.of(who, Role.DIRECTOR, Role.COMMITTEE_MEMBER);
        Programme programme = OutcomeProgrammes.chosen(open, wish.programme());
        ProgrammeSettings numbers = settings.of(programme.id());
        Instant now = clock.instant();
        List<JudgedCase> judged = new ArrayList<>();
        programmes
                .outcomes(programmes.cases(programme.id(), wish.family(), null), now)
                .forEach((one, outcome) ->
                        judged.add(new JudgedCase(one, outcome, wish.set().judge(outcome, numbers.successLowest()))));
        return new Reading(programme, open, wish, numbers, Collections.unmodifiableList(judged), now);
    }

    /** What one request reads, to be counted. */
    private record Reading(
            Programme programme,
            List<Programme> open,
            Wish wish,
            ProgrammeSettings settings,
            List<JudgedCase> judged,
            Instant at) {

        OutcomeReport report() {
            OutcomeCounts counts = new OutcomeCounts(judged, settings.lowPressureAt());
            return new OutcomeReport(
                    programme,
                    open,
                    wish,
                    settings,
                    counts.all(),
                    counts.trainees(),
                    counts.early(),
                    counts.care(),
                    counts.operatorAlone(),
                    at);
        }
    }
}
