package org.scrubline.committee;

import static org.scrubline.committee.CommitteeAccess.require;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Part;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.TraineeCase;
import org.scrubline.committee.Suspensions.Gap;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.entitlement.Entitlements;
import org.scrubline.people.People;
import org.scrubline.people.Settings;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Finds who has not operated in a family for longer than the programme allows. Cases as logged count: the time is theirs. */
@Service
@Transactional(readOnly = true)
class GapReading {

    private final Entitlements entitlements;
    private final Cases cases;
    private final Rubrics rubrics;
    private final People people;
    private final Settings settings;
    private final CommitteeAccess access;
    private final Clock clock;

    GapReading(
            Entitlements entitlements,
            Cases cases,
            Rubrics rubrics,
            People people,
            Settings settings,
            CommitteeAccess access,
            Clock clock) {
        this.entitlements = entitlements;
        this.cases = cases;
        this.rubrics = rubrics;
        this.people = people;
        this.settings = settings;
        this.access = access;
        this.clock = clock;
    }

    public List<Gap> of(SignedIn director, UUID programmeId) {
        require(access.directs(director, programmeId));
        Duration longest = settings.of(programmeId).gapSuspends();
        return entitlements.ofProgramme(programmeId).stream()
                .filter(one -> !one.suspended() && one.level() != EntitlementLevel.E0)
                .map(this::gap)
                .filter(gap -> gap.days() > longest.toDays())
                .sorted(Comparator.comparing(Gap::days).reversed())
                .toList();
    }

    private Gap gap(Entitlement one) {
        Optional<Instant> last = cases.ofTrainee(one.traineeId()).stream()
                .filter(line -> line.claimedPart() != Part.ASSISTED && !line.isVoid())
                .map(TraineeCase::surgicalCase)
                .filter(operation -> operation.endedAt() != null && family(operation) == one.family())
                .map(operation -> Objects.requireNonNull(operation.endedAt()))
                .max(Instant::compareTo);
        return new Gap(
                people.person(one.traineeId()).orElseThrow(NotFound::new),
                one,
                last.orElse(null),
                Duration.between(last.orElse(one.decidedAt()), clock.instant()).toDays());
    }

    private Family family(SurgicalCase operation) {
        String converted = operation.convertedTo();
        return rubrics.current(converted == null ? operation.procedureCode() : converted)
                .rubric()
                .family();
    }
}
