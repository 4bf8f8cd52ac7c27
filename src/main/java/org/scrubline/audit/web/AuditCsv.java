package org.scrubline.audit.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditEntry;
import org.scrubline.platform.Csv;
import org.scrubline.platform.Role;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Component;

/** Writes entries as a file, one at a time as they are read. */
@Component
class AuditCsv {

    private static final List<String> HEAD = List.of(
            "sequence",
            "server_time_utc",
            "device_time_utc",
            "action",
            "sentence",
            "actor",
            "actor_roles",
            "on_behalf_of",
            "about",
            "record_kind",
            "record_id",
            "record_version",
            "record_label",
            "reason",
            "before",
            "after",
            "session_sha256",
            "source_address",
            "app_version");

    private final AuditWords words;

    AuditCsv(AuditWords words) {
        this.words = words;
    }

    /** Everything an entry holds. */
    void whole(HttpServletResponse response, String name, Consumer<Consumer<AuditEntry>> entries) throws IOException {
        write(response, name, entries, entry -> true);
    }

    /** For one person: where others sat when they read is their own business and stays out. */
    void own(HttpServletResponse response, String name, UUID person, Consumer<Consumer<AuditEntry>> entries)
            throws IOException {
        write(
                response,
                name,
                entries,
                entry -> entry.actor() != null && entry.actor().id().equals(person));
    }

    private void write(
            HttpServletResponse response,
            String name,
            Consumer<Consumer<AuditEntry>> entries,
            Predicate<AuditEntry> withSource)
            throws IOException {
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
        PrintWriter out = response.getWriter();
        out.write(Csv.line(HEAD));
        entries.accept(entry -> out.write(Csv.line(cells(entry, withSource.test(entry)))));
    }

    private List<String> cells(AuditEntry entry, boolean withSource) {
        return Stream.of(
                        Long.toString(entry.sequence()),
                        entry.at().toString(),
                        text(entry.deviceAt()),
                        entry.action(),
                        words.sentence(entry),
                        words.name(entry.actor()),
                        entry.roles().stream().map(Role::name).collect(Collectors.joining(" ")),
                        name(entry.onBehalfOf()),
                        name(entry.about()),
                        entry.item().kind(),
                        text(entry.item().id()),
                        text(entry.item().version()),
                        entry.item().label(),
                        text(entry.reason()),
                        text(entry.before()),
                        text(entry.after()),
                        withSource ? text(entry.sessionHash()) : "",
                        withSource ? entry.address() : "",
                        entry.appVersion())
                .toList();
    }

    private static String name(AuditEntry.@Nullable Named person) {
        return person == null ? "" : person.name();
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }
}
