package org.scrubline.signoff.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited.Item;
import org.scrubline.platform.Csv;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.TakesAlong.Size;
import org.scrubline.signoff.RecordExport;
import org.scrubline.signoff.RecordExport.Line;
import org.scrubline.signoff.RecordExport.Signature;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpHeaders;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The signed records of the programmes a director leads, as a table to take along. */
@Controller
class RecordsFileController {

    private static final List<String> HEAD = List.of(
            "record_id",
            "sheet_id",
            "version",
            "case_reference",
            "procedure",
            "rubric_version",
            "case_ended_at_utc",
            "complexity_band",
            "trainee",
            "part",
            "supervision",
            "verdict",
            "late_entry",
            "signed_by",
            "signed_role",
            "signed_meaning",
            "signed_at",
            "signed_zone",
            "void",
            "contested",
            "contest_outcome",
            "awaiting_countersignature",
            "countersigned_by",
            "countersigned_role",
            "countersigned_meaning",
            "countersigned_at",
            "countersigned_zone",
            "acknowledged_at_utc",
            "content_sha256");

    private final RecordExport records;
    private final ApplicationEventPublisher events;

    RecordsFileController(RecordExport records, ApplicationEventPublisher events) {
        this.records = records;
        this.events = events;
    }

    @GetMapping("/records.csv")
    @TakesAlong(Size.MANY)
    void file(@AuthenticationPrincipal SignedIn who, HttpServletResponse response) throws IOException {
        List<UUID> programmes = who.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR)
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .toList();
        if (programmes.isEmpty()) {
            throw new NotFound();
        }
        programmes.forEach(programme -> events.publishEvent(
                new RecordSeen(who, null, programme, new Item("records-file", programme, null, ""), null)));
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8.name());
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"scrubline-records.csv\"");
        PrintWriter out = response.getWriter();
        out.write(Csv.line(HEAD));
        programmes.forEach(programme -> records.each(who, programme, line -> out.write(Csv.line(cells(line)))));
    }

    private static List<String> cells(Line line) {
        return Stream.of(
                        Stream.of(
                                line.id().toString(),
                                line.sheet().toString(),
                                Integer.toString(line.version()),
                                line.reference(),
                                line.procedure(),
                                line.rubricVersion(),
                                line.caseEndedAt().toString(),
                                line.band(),
                                line.trainee(),
                                line.part(),
                                line.supervision(),
                                line.verdict(),
                                Boolean.toString(line.late())),
                        signature(line.signed()),
                        Stream.of(
                                Boolean.toString(line.voided()),
                                Boolean.toString(line.marks().contested()),
                                text(line.marks().outcome()),
                                Boolean.toString(line.marks().awaitingCountersignature())),
                        signature(line.countersigned()),
                        Stream.of(text(line.acknowledgedAt()), line.contentHash()))
                .flatMap(cells -> cells)
                .toList();
    }

    private static Stream<String> signature(@Nullable Signature signature) {
        return signature == null
                ? Stream.of("", "", "", "", "")
                : Stream.of(
                        signature.name(),
                        signature.role(),
                        signature.meaning(),
                        local(signature.at(), signature.zone()),
                        signature.zone().getId());
    }

    /** Local time with its offset, ISO 8601. */
    private static String local(Instant at, ZoneId zone) {
        return at.atZone(zone).toOffsetDateTime().toString();
    }

    private static String text(@Nullable Object value) {
        return value == null ? "" : value.toString();
    }
}
