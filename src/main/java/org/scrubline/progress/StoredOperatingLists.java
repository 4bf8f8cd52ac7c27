package org.scrubline.progress;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Cases;
import org.scrubline.casework.PlannedCase;
import org.scrubline.casework.PlannedCases;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.People;
import org.scrubline.people.Settings;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredOperatingLists implements OperatingLists {

    private final PlannedCases planned;
    private final Cases cases;
    private final SignedFocus focus;
    private final People people;
    private final Settings settings;
    private final Clock clock;

    StoredOperatingLists(
            PlannedCases planned, Cases cases, SignedFocus focus, People people, Settings settings, Clock clock) {
        this.planned = planned;
        this.cases = cases;
        this.focus = focus;
        this.people = people;
        this.settings = settings;
        this.clock = clock;
    }

    @Override
    public List<ListedCase> ofSupervisor(SignedIn who) {
        return planned.ofScorer(who.personId()).stream()
                .map(one ->
                        new ListedCase(one, isNext(one.surgicalCase()) ? Optional.of(evidence(one)) : Optional.empty()))
                .toList();
    }

    @Override
    public List<ListedCase> ofTrainee(SignedIn who) {
        return planned.ofTrainee(who.personId()).stream()
                .map(one -> new ListedCase(one, Optional.of(evidence(one))))
                .toList();
    }

    /** Today or tomorrow by the calendar of the site. */
    private boolean isNext(SurgicalCase found) {
        LocalDate day = found.plannedOn();
        ZoneId zone = Objects.requireNonNull(found.endedZone());
        LocalDate today = LocalDate.ofInstant(clock.instant(), zone);
        return day != null && !day.isBefore(today) && !day.isAfter(today.plusDays(1));
    }

    private ListedCase.Evidence evidence(PlannedCase one) {
        SurgicalCase found = one.surgicalCase();
        UUID trainee = one.traineeId();
        String procedure = found.procedureCode();
        Optional<ProcedureProgress> progress = focus.progress(found.programmeId(), trainee, procedure);
        @Nullable Instant last = planned.lastOperated(trainee, procedure).orElse(null);
        @Nullable Duration since = last == null ? null : Duration.between(last, clock.instant());
        return new ListedCase.Evidence(
                cases.operated(trainee, procedure) + people.priorExperience(trainee, procedure),
                progress.map(counted -> counted.evidence().cases().size()).orElse(0),
                progress.map(counted -> counted.evidence().scorers()).orElse(0),
                last,
                since,
                since != null
                        && since.compareTo(settings.of(found.programmeId()).gapShown()) >= 0,
                progress.map(SignedFocus::focus).orElseGet(List::of),
                progress.map(counted -> counted.steps().stream()
                                .filter(StepProgress::gated)
                                .filter(step -> !step.enough())
                                .map(StepProgress::step)
                                .toList())
                        .orElseGet(List::of));
    }
}
