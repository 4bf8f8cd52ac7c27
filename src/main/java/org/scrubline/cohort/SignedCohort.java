package org.scrubline.cohort;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.Cases;
import org.scrubline.casework.OpenWork;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class SignedCohort implements Cohort {

    private final People people;
    private final Rubrics rubrics;
    private final SignedSheets sheets;
    private final Cases cases;
    private final Settings settings;
    private final Clock clock;

    SignedCohort(People people, Rubrics rubrics, SignedSheets sheets, Cases cases, Settings settings, Clock clock) {
        this.settings = settings;
        this.people = people;
        this.rubrics = rubrics;
        this.sheets = sheets;
        this.cases = cases;
        this.clock = clock;
    }

    @Override
    public List<Programme> programmes(SignedIn who) {
        return people.programmes().stream()
                .filter(programme ->
                        who.has(Role.DIRECTOR, programme.id()) || who.has(Role.COMMITTEE_MEMBER, programme.id()))
                .sorted(Comparator.comparing(Programme::name).thenComparing(Programme::id))
                .toList();
    }

    @Override
    public List<Rubric> procedures() {
        return rubrics.inForce().stream().map(PublishedRubric::rubric).toList();
    }

    @Override
    public CohortReport report(SignedIn who, @Nullable UUID programmeId, @Nullable String procedure) {
        Programme programme = programmes(who).stream()
                .filter(one -> programmeId == null || one.id().equals(programmeId))
                .findFirst()
                .orElseThrow(NotFound::new);
        Rubric rubric = procedures().stream()
                .filter(one -> procedure == null || one.procedure().equals(procedure))
                .findFirst()
                .orElseThrow(NotFound::new);
        return report(programme, rubric, clock.instant());
    }

    private CohortReport report(Programme programme, Rubric rubric, Instant now) {
        List<SignedSheet> signed = sheets.ofProgramme(programme.id(), rubric.procedure());
        Map<UUID, List<SignedSheet>> byTrainee = signed.stream().collect(Collectors.groupingBy(SignedSheet::traineeId));
        Map<UUID, OpenWork> work = cases.openWork(programme.id(), rubric.procedure());
        Function<UUID, Rubric> versions = rubrics.published().stream()
                .collect(Collectors.toMap(PublishedRubric::id, PublishedRubric::rubric))::get;
        ProgrammeSettings numbers = settings.of(programme.id());
        List<TraineeRow> rows = new ArrayList<>();
        List<Instant> unsigned = new ArrayList<>();
        List<Person> training = people.holding(programme.id(), Role.TRAINEE);
        for (Person trainee : trainees(training, byTrainee)) {
            OpenWork open = work.getOrDefault(trainee.id(), OpenWork.NONE);
            unsigned.addAll(open.unsigned());
            rows.add(row(
                    trainee,
                    ProcedureProgress.of(byTrainee.getOrDefault(trainee.id(), List.of()), versions, numbers),
                    open));
        }
        // Who has left is listed with their cases; nothing about them waits for anybody.
        List<WorthALook> worthALook = rows.stream()
                .filter(row -> training.contains(row.trainee()))
                .flatMap(row -> WorthALook.in(row, now, numbers).stream())
                .toList();
        Timeliness timeliness = Timeliness.of(signed, unsigned, now, numbers);
        return new CohortReport(programme, rubric, rows, worthALook, timeliness, numbers, now);
    }

    private List<Person> trainees(List<Person> training, Map<UUID, List<SignedSheet>> byTrainee) {
        Set<UUID> listed = training.stream().map(Person::id).collect(Collectors.toSet());
        Stream<Person> left = byTrainee.keySet().stream()
                .filter(id -> !listed.contains(id))
                .map(people::person)
                .flatMap(Optional::stream);
        return Stream.concat(training.stream(), left)
                .sorted(Comparator.comparing(Person::printedName).thenComparing(Person::id))
                .toList();
    }

    private static TraineeRow row(Person trainee, Optional<ProcedureProgress> progress, OpenWork open) {
        Optional<Instant> lastSigned = progress.flatMap(one -> one.evidence().lastCaseAt());
        return new TraineeRow(
                trainee,
                progress.orElse(null),
                open.unsigned().size(),
                open.lastCase(lastSigned).orElse(null));
    }
}
