package org.scrubline.cohort;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Cases;
import org.scrubline.casework.EndedCase;
import org.scrubline.casework.Part;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.TraineeCase;
import org.scrubline.people.ExposurePlan;
import org.scrubline.people.ExposurePlans;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Placements;
import org.scrubline.people.Programme;
import org.scrubline.people.TrainingTime;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class ReadExposure implements Exposure {

    private static final List<Role> READERS = List.of(Role.DIRECTOR, Role.COMMITTEE_MEMBER, Role.ADMINISTRATOR);

    private final People people;
    private final Placements placements;
    private final ExposurePlans plans;
    private final Rubrics rubrics;
    private final Cases cases;
    private final Clock clock;

    ReadExposure(People people, Placements placements, ExposurePlans plans, Rubrics rubrics, Cases cases, Clock clock) {
        this.people = people;
        this.placements = placements;
        this.plans = plans;
        this.rubrics = rubrics;
        this.cases = cases;
        this.clock = clock;
    }

    @Override
    public Report report(SignedIn who, @Nullable UUID programmeId) {
        Programme programme = programme(who, programmeId);
        return report(programme, plans.of(programme.id()), clock.instant());
    }

    @Override
    public LineCases cases(SignedIn who, @Nullable UUID programmeId, UUID trainee, Family family) {
        Programme programme = programme(who, programmeId);
        Person about = people.holding(programme.id(), Role.TRAINEE).stream()
                .filter(one -> one.id().equals(trainee))
                .findFirst()
                .orElseThrow(NotFound::new);
        Map<UUID, SurgicalCase> logged = cases.ofTrainee(trainee).stream()
                .map(TraineeCase::surgicalCase)
                .collect(Collectors.toMap(SurgicalCase::id, Function.identity()));
        List<Done> done = done(programme.id(), family).stream()
                .filter(one -> one.traineeId().equals(trainee))
                .sorted(Comparator.comparing(EndedCase::endedAt).reversed())
                .map(one ->
                        new Done(Objects.requireNonNull(logged.get(one.caseId())), one.claimedPart(), one.waiting()))
                .toList();
        return new LineCases(programme, about, family, done);
    }

    private Programme programme(SignedIn who, @Nullable UUID programmeId) {
        return people.programmes().stream()
                .filter(one -> READERS.stream().anyMatch(role -> who.has(role, one.id())))
                .filter(one -> programmeId == null || one.id().equals(programmeId))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private Report report(Programme programme, ExposurePlan plan, Instant now) {
        Map<Family, List<EndedCase>> done = done(programme.id(), plan);
        List<Line> lines = new ArrayList<>();
        List<Person> unplaced = new ArrayList<>();
        for (Person trainee : people.holding(programme.id(), Role.TRAINEE)) {
            TrainingTime time = placements.time(programme.id(), trainee.id());
            if (time.first().isEmpty()) {
                unplaced.add(trainee);
            } else {
                done.forEach((family, all) -> lines.add(new Reading(plan, time, programme, now)
                        .line(
                                trainee,
                                family,
                                all.stream()
                                        .filter(one -> one.traineeId().equals(trainee.id()))
                                        .toList())));
            }
        }
        return new Report(programme, !done.isEmpty(), lines, unplaced, now);
    }

    /** Cases operated in, by family, for the families something is planned for. */
    private Map<Family, List<EndedCase>> done(UUID programme, ExposurePlan plan) {
        Map<Family, List<EndedCase>> done = new EnumMap<>(Family.class);
        Stream.of(Family.values())
                .filter(family -> plan.plans(family.name()))
                .forEach(family -> done.put(family, done(programme, family)));
        return done;
    }

    private List<EndedCase> done(UUID programme, Family family) {
        return rubrics.published().stream()
                .map(PublishedRubric::rubric)
                .filter(rubric -> rubric.family() == family)
                .map(Rubric::procedure)
                .distinct()
                .flatMap(procedure -> cases.ended(programme, procedure).stream())
                .filter(one -> one.claimedPart() != Part.ASSISTED)
                .toList();
    }

    /** What is counted of one trainee. */
    private record Reading(ExposurePlan plan, TrainingTime time, Programme programme, Instant now) {

        Line line(Person trainee, Family family, List<EndedCase> done) {
            int months = time.monthsOver(LocalDate.ofInstant(now, programme.zone()));
            ExposurePlan.Done counts = new ExposurePlan.Done(by(months - 1, done), by(months, done), done.size());
            return new Line(
                    trainee,
                    family,
                    months,
                    plan.planned(family.name(), time, months),
                    done.size(),
                    (int) done.stream().filter(one -> one.waiting() > 0).count(),
                    plan.behind(family.name(), time, months, counts));
        }

        /** Cases that ended before so many training months were over. */
        private int by(int months, List<EndedCase> done) {
            Instant end = time.first()
                    .orElseThrow()
                    .plusMonths(Math.max(0, months))
                    .atStartOfDay(programme.zone())
                    .toInstant();
            return (int)
                    done.stream().filter(one -> one.endedAt().isBefore(end)).count();
        }
    }
}
