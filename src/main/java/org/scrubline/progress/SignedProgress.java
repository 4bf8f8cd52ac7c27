package org.scrubline.progress;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.people.Visitors;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class SignedProgress implements Progress {

    private final SignedSheets sheets;
    private final Rubrics rubrics;
    private final People people;
    private final Visitors visitors;
    private final Settings settings;

    SignedProgress(SignedSheets sheets, Rubrics rubrics, People people, Visitors visitors, Settings settings) {
        this.settings = settings;
        this.sheets = sheets;
        this.rubrics = rubrics;
        this.people = people;
        this.visitors = visitors;
    }

    @Override
    @Transactional(readOnly = true)
    public TraineeProgress read(SignedIn who, UUID traineeId) {
        Person trainee = people.person(traineeId).orElseThrow(NotFound::new);
        List<SignedSheet> signed = readable(who, traineeId, sheets.ofTrainee(traineeId));
        Function<UUID, Rubric> versions = rubrics.published().stream()
                .collect(Collectors.toMap(PublishedRubric::id, PublishedRubric::rubric))::get;
        List<ProcedureProgress> procedures = Procedures.ALL.stream()
                .map(procedure -> signed.stream()
                        .filter(sheet -> sheet.procedureCode().equals(procedure))
                        .toList())
                .filter(ofProcedure -> !ofProcedure.isEmpty())
                .map(ofProcedure -> ProcedureProgress.of(ofProcedure, versions, settings(ofProcedure)))
                .flatMap(Optional::stream)
                .toList();
        return new TraineeProgress(trainee, procedures);
    }

    /** Of the programme of the newest case. */
    private ProgrammeSettings settings(List<SignedSheet> oldestFirst) {
        return settings.of(oldestFirst.get(oldestFirst.size() - 1).programmeId());
    }

    /** The sheets this reader may count; refuses readers who may not know the trainee at all. */
    private List<SignedSheet> readable(SignedIn who, UUID traineeId, List<SignedSheet> signed) {
        if (who.personId().equals(traineeId)) {
            return signed;
        }
        Set<UUID> led = new HashSet<>(ledBy(who));
        visitors.toTrainee(who, traineeId).forEach(access -> led.add(access.programmeId()));
        List<SignedSheet> inThose = signed.stream()
                .filter(sheet -> led.contains(sheet.programmeId()))
                .toList();
        if (inThose.isEmpty() && led.stream().noneMatch(programme -> trains(programme, traineeId))) {
            throw new NotFound();
        }
        return inThose;
    }

    private static Set<UUID> ledBy(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR || grant.role() == Role.COMMITTEE_MEMBER)
                .map(SignedIn.Grant::programmeId)
                .collect(Collectors.toSet());
    }

    private boolean trains(UUID programme, UUID traineeId) {
        return people.holding(programme, Role.TRAINEE).stream()
                .anyMatch(person -> person.id().equals(traineeId));
    }
}
