package org.scrubline.audit.web;

import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditEntry;
import org.scrubline.platform.RefusedLogins.Refused;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.springframework.stereotype.Component;

/** Sets entries in tables. */
@Component
class AuditTables {

    private final AuditWords words;

    AuditTables(AuditWords words) {
        this.words = words;
    }

    /** Who looked: who, as what, when, at which record, what for. */
    TableView seen(List<AuditEntry> entries, ZoneId zone) {
        return new TableView(
                List.of(
                        column("audit.column.who"),
                        column("audit.column.role"),
                        column("audit.column.when"),
                        column("audit.column.record"),
                        column("audit.column.purpose")),
                entries.stream()
                        .map(entry -> List.of(
                                Cell.of(words.name(entry.actor())),
                                Cell.of(words.roles(entry.roles())),
                                Cell.of(words.at(entry.at(), zone)),
                                record(entry),
                                Cell.of(dash(entry.reason()))))
                        .toList());
    }

    /** What was done: the sentence, when, the reason, from where. */
    TableView done(List<AuditEntry> entries, ZoneId zone) {
        return new TableView(
                List.of(
                        column("audit.column.what"),
                        column("audit.column.when"),
                        column("audit.column.reason"),
                        column("audit.column.address")),
                entries.stream()
                        .map(entry -> List.of(
                                Cell.of(words.sentence(entry)),
                                Cell.of(words.at(entry.at(), zone)),
                                Cell.of(dash(entry.reason())),
                                Cell.of(entry.address())))
                        .toList());
    }

    TableView refused(List<Refused> refusals, ZoneId zone) {
        return new TableView(
                List.of(
                        column("audit.column.account"),
                        new Column(words.say("audit.column.wrong"), true),
                        new Column(words.say("audit.column.blocked"), true),
                        column("audit.column.last"),
                        column("audit.column.address")),
                refusals.stream()
                        .map(one -> List.of(
                                Cell.of(one.username()),
                                Cell.of(one.wrong()),
                                Cell.of(one.blocked()),
                                Cell.of(words.at(one.lastAt(), zone)),
                                Cell.of(one.lastAddress())))
                        .toList());
    }

    private Column column(String key) {
        return new Column(words.say(key), false);
    }

    /** The person reads an own record under the address everyone reads it at. */
    private Cell record(AuditEntry entry) {
        return switch (entry.item().kind()) {
            case "signed-sheet" ->
                new Cell(
                        words.say("audit.record.signed-sheet", entry.item().label()),
                        "/signed/" + entry.item().id());
            case "evidence-pack" -> new Cell(words.say("audit.record.evidence-pack"), "/decisions");
            case "committee-decision" ->
                new Cell(
                        words.say("audit.record.committee-decision"),
                        "/decisions/" + entry.item().id());
            default -> new Cell(words.say("audit.record.progress"), "/progress");
        };
    }

    private static String dash(@Nullable String text) {
        return text == null || text.isEmpty() ? "–" : text;
    }
}
