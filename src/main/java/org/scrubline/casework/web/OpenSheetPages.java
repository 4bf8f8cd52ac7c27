package org.scrubline.casework.web;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.casework.OpenSheets;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.people.Roles;
import org.scrubline.platform.Role;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.springframework.stereotype.Component;

/** Makes the pages of open sheets. */
@Component
class OpenSheetPages {

    private final People people;
    private final Roles roles;
    private final CaseWords words;

    OpenSheetPages(People people, Roles roles, CaseWords words) {
        this.people = people;
        this.roles = roles;
        this.words = words;
    }

    /**
     * The sheets of one supervisor.
     *
     * @param options the same sheets to choose from
     * @param supervisors who may get one
     */
    record OpenSheetsPage(
            String href,
            String programme,
            String name,
            TableView sheets,
            List<Option> options,
            List<Option> supervisors) {}

    TableView holders(Programme programme, List<OpenSheets.Holder> holders) {
        return new TableView(
                columns("supervisor", "role", "sheets"),
                holders.stream()
                        .map(one -> List.of(
                                new Cell(
                                        one.name(),
                                        OpenSheetsController.PATH + "/" + one.id() + "?programme=" + programme.id()),
                                Cell.of(words.say(
                                        one.supervises() ? "open-sheets.role.here" : "open-sheets.role.left")),
                                Cell.of(one.sheets())))
                        .toList());
    }

    /** Whether the person is or was a supervisor of the programme. */
    boolean known(Programme programme, UUID person) {
        return roles.everHeld(programme.id(), Role.SUPERVISOR).stream()
                .anyMatch(one -> one.id().equals(person));
    }

    OpenSheetsPage of(Programme programme, UUID person, String name, List<OpenSheets.Held> open) {
        return new OpenSheetsPage(
                OpenSheetsController.PATH + "/" + person,
                programme.id().toString(),
                name,
                table(open, programme.zone()),
                open.stream()
                        .map(one -> Option.of(
                                one.sheetId(),
                                words.say("open-sheets.hand.option", one.reference(), one.traineeName())))
                        .toList(),
                people.holding(programme.id(), Role.SUPERVISOR).stream()
                        .filter(one -> !one.id().equals(person))
                        .map(one -> Option.of(one.id(), one.printedName()))
                        .toList());
    }

    private TableView table(List<OpenSheets.Held> open, ZoneId zone) {
        return new TableView(
                columns("case", "trainee", "procedure", "ended", "answered"),
                open.stream()
                        .map(one -> List.of(
                                Cell.of(one.reference()),
                                Cell.of(one.traineeName()),
                                Cell.of(words.procedure(one.procedureCode())),
                                Cell.of(CaseWords.day(LocalDate.ofInstant(one.endedAt(), zone))),
                                Cell.of(one.answered())))
                        .toList());
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(
                        words.say("open-sheets.column." + key), key.equals("sheets") || key.equals("answered")))
                .toList();
    }
}
