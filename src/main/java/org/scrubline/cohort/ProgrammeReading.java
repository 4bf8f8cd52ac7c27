package org.scrubline.cohort;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Part;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.StepState;
import org.scrubline.casework.TraineeCase;
import org.scrubline.cohort.signal.ProgrammeRecord;
import org.scrubline.cohort.signal.SignedForm;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.platform.Role;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CaseBand;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Component;

/** Turns what a programme signed into the plain record the rules read. */
@Component
class ProgrammeReading {

    private static final double PERCENT = 100;

    private final SignedSheets sheets;
    private final Cases cases;
    private final People people;
    private final Rubrics rubrics;
    private final Clock clock;

    ProgrammeReading(SignedSheets sheets, Cases cases, People people, Rubrics rubrics, Clock clock) {
        this.sheets = sheets;
        this.cases = cases;
        this.people = people;
        this.rubrics = rubrics;
        this.clock = clock;
    }

    /** The record of this hour: within it, the same sheets give the same record. */
    ProgrammeRecord read(UUID programme, ProgrammeSettings settings) {
        List<SignedForm> forms = Procedures.ALL.stream()
                .flatMap(procedure -> sheets.ofProgramme(programme, procedure).stream())
                .filter(sheet -> sheet.confirmedPart() != Part.ASSISTED)
                .map(ProgrammeReading::form)
                .toList();
        List<String> trainees = Stream.concat(
                        people.holding(programme, Role.TRAINEE).stream()
                                .map(Person::id)
                                .map(UUID::toString),
                        forms.stream().map(SignedForm::trainee))
                .distinct()
                .sorted()
                .toList();
        return new ProgrammeRecord(
                forms,
                trainees.stream()
                        .flatMap(trainee -> unsigned(programme, trainee))
                        .toList(),
                earlier(trainees),
                critical(),
                limits(settings),
                clock.instant().truncatedTo(ChronoUnit.HOURS));
    }

    private static SignedForm form(SignedSheet sheet) {
        Map<String, Integer> levels = new HashMap<>();
        sheet.steps().forEach(step -> {
            if (step.state() instanceof StepState.Scored scored) {
                levels.put(step.stepCode(), scored.level());
            }
        });
        return new SignedForm(
                sheet.id().toString(),
                sheet.caseId().toString(),
                sheet.traineeId().toString(),
                sheet.signerId().toString(),
                sheet.procedureCode(),
                sheet.caseEndedAt(),
                sheet.firstSignedAt(),
                CaseBand.valueOf(sheet.band().name()),
                levels,
                !sheet.marks().awaitingCountersignature());
    }

    private Stream<ProgrammeRecord.Unsigned> unsigned(UUID programme, String trainee) {
        return cases.ofTrainee(UUID.fromString(trainee)).stream()
                .filter(one -> one.surgicalCase().programmeId().equals(programme))
                .filter(one -> one.claimedPart() != Part.ASSISTED && !one.isVoid())
                .flatMap(one -> unsigned(one, trainee));
    }

    private static Stream<ProgrammeRecord.Unsigned> unsigned(TraineeCase one, String trainee) {
        Instant ended = one.surgicalCase().endedAt();
        return ended == null
                ? Stream.empty()
                : one.sheets().stream()
                        .filter(sheet -> sheet.state() == SheetState.OPEN || sheet.state() == SheetState.REMOVED)
                        .map(sheet -> new ProgrammeRecord.Unsigned(
                                trainee, one.surgicalCase().id().toString(), ended));
    }

    /** Cases declared from before the programme, of all procedures together, by trainee. */
    private Map<String, Integer> earlier(List<String> trainees) {
        Map<String, Integer> earlier = new HashMap<>();
        trainees.forEach(trainee -> earlier.put(trainee, 0));
        for (String procedure : Procedures.ALL) {
            people.priorExperience(procedure)
                    .forEach((trainee, cases) ->
                            earlier.computeIfPresent(trainee.toString(), (id, before) -> before + cases));
        }
        return earlier;
    }

    /** Of the version of each procedure in force now. */
    private Map<String, List<String>> critical() {
        Map<String, List<String>> critical = new HashMap<>();
        rubrics.inForce().forEach(version -> critical.put(version.rubric().procedure(), critical(version)));
        return critical;
    }

    private static List<String> critical(PublishedRubric version) {
        return version.rubric().criticalSteps().stream()
                .filter(step -> !step.onlyWhenConverted())
                .map(Step::code)
                .toList();
    }

    private static ProgrammeRecord.Limits limits(ProgrammeSettings settings) {
        return new ProgrammeRecord.Limits(
                settings.gapShown(),
                settings.lateAfter(),
                settings.closedAfter(),
                new ProcedureStandard.Minimums(
                        settings.shownCases(),
                        settings.shownScorers(),
                        settings.shownStepScores(),
                        settings.shownIndex(),
                        ProcedureStandard.Minimums.USUAL.reportableIndex(),
                        settings.supportsCases(),
                        settings.supportsScorers(),
                        settings.mostByOne() / PERCENT));
    }

    /** Names of all published steps by code, the newest wording first. */
    Map<String, String> stepNames() {
        Map<String, String> names = new HashMap<>();
        rubrics.published().stream()
                .map(version -> version.rubric().steps())
                .flatMap(Collection::stream)
                .forEach(step -> names.putIfAbsent(step.code(), step.name()));
        return names;
    }
}
