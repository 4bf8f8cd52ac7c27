package org.scrubline.casework.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.scrubline.casework.CaseFile;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.web.ChangePage.Field;
import org.scrubline.casework.web.ChangePage.Kind;
import org.scrubline.platform.FormView;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** Makes the small forms about a case. */
@Component
class ChangePages {

    private final CaseWords words;
    private final CasePages pages;
    private final Wording wording;
    private final Clock clock;

    ChangePages(CaseWords words, CasePages pages, Wording wording, Clock clock) {
        this.words = words;
        this.pages = pages;
        this.wording = wording;
        this.clock = clock;
    }

    /** A form nothing was typed into; an end starts with the time at the site. */
    Typed fresh(SignedIn who, CaseFile file) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        values.add("endedAt", LocalEnd.now(clock.instant(), zone(file)));
        LocalDate day = file.surgicalCase().plannedOn();
        values.add("plannedOn", day == null ? "" : day.toString());
        file.trainees().stream()
                .filter(trainee -> trainee.traineeId().equals(who.personId()))
                .forEach(trainee -> values.add("goal", trainee.goal()));
        if (file.trainees().size() == 1) {
            values.add("trainee", file.trainees().get(0).traineeId().toString());
        }
        return new Typed(values);
    }

    static ZoneId zone(CaseFile file) {
        return Objects.requireNonNull(file.surgicalCase().endedZone());
    }

    ChangePage page(CaseFile file, CaseChange change, Typed typed, List<Refusal> reasons) {
        SurgicalCase found = file.surgicalCase();
        return new ChangePage(
                change,
                "/cases/" + found.id(),
                pages.title(found),
                new FormView(typed.values().toSingleValueMap(), wording.errors(reasons)),
                fields(file, change, typed));
    }

    private List<Field> fields(CaseFile file, CaseChange change, Typed typed) {
        UUID programme = file.surgicalCase().programmeId();
        return switch (change) {
            case GOAL -> List.of(new Field(Kind.TEXT, "goal", List.of()));
            case PLAN -> List.of(new Field(Kind.DAY, "plannedOn", List.of()));
            case START -> List.of();
            case END -> end(typed, zone(file));
            case SCORERS -> List.of(new Field(Kind.SELECT, "trainee", participants(file)), supervisors(programme));
            case TRAINEES ->
                List.of(
                        new Field(
                                Kind.SELECT,
                                "trainee",
                                words.holding(programme, Role.TRAINEE, person -> !file.hasTrainee(person.id()))),
                        new Field(Kind.CHOICES, "claimedPart", words.parts(false)),
                        supervisors(programme));
            case HAND_ON ->
                List.of(
                        new Field(Kind.SELECT, "sheet", untouched(file)),
                        supervisors(programme),
                        new Field(Kind.TEXT, "reason", List.of()));
            case ABANDON -> List.of(new Field(Kind.TEXT, "abandonedReason", List.of()));
            case CONVERT ->
                List.of(new Field(
                        Kind.SELECT,
                        "convertedTo",
                        words.procedures().stream()
                                .filter(option -> !option.value()
                                        .equals(file.surgicalCase().procedureCode()))
                                .toList()));
        };
    }

    private static List<Field> end(Typed typed, ZoneId zone) {
        List<Field> fields = new ArrayList<>();
        fields.add(new Field(Kind.MOMENT, "endedAt", List.of()));
        List<Option> readings = LocalEnd.readings(typed.text("endedAt"), zone);
        if (!readings.isEmpty()) {
            fields.add(new Field(Kind.CHOICES, "endedOffset", readings));
        }
        return fields;
    }

    private Field supervisors(UUID programme) {
        return new Field(Kind.SELECT, "supervisor", words.holding(programme, Role.SUPERVISOR, person -> true));
    }

    private static List<Option> participants(CaseFile file) {
        return file.trainees().stream()
                .map(trainee -> Option.of(trainee.traineeId(), trainee.name()))
                .toList();
    }

    private List<Option> untouched(CaseFile file) {
        return file.requests().stream()
                .filter(CaseFile.ScoreRequest::untouched)
                .map(request -> Option.of(
                        request.sheetId(),
                        words.say(
                                "case.request",
                                request.scorer().name(),
                                request.trainee().name())))
                .toList();
    }
}
