package org.scrubline.signoff;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.scrubline.signoff.SheetContent.StepLine;
import org.scrubline.signoff.SignedSheet.SignedEvent;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds signed sheets; there is no statement here that changes one, and the server may run none. */
@Repository
class SignedSheetStore {

    private static final String INSERT = """
            insert into signed_sheet (
                tenant_id, id, sheet_id, version_no, content, content_hash,
                signer_id, signer_name, signer_role, meaning, signed_at, signed_zone, received_at,
                programme_id, site_id, case_id, case_ended_at, trainee_id, rubric_version_id,
                procedure_code, band, confirmed_part, given_supervision, verdict, late)
            values (
                :tenant, :id, :sheet, :version, :content, :hash,
                :signer, :signerName, :signerRole, :meaning, :signedAt, :signedZone, :receivedAt,
                :programme, :site, :case, :caseEndedAt, :trainee, :rubric,
                :procedure, :band, :part, :supervision, :verdict, :late)
            """;
    private static final String INSERT_STEPS = """
            insert into signed_step (tenant_id, signed_sheet_id, step_code, critical, state, level, cause)
            select :tenant, :id, t.code, t.critical, t.state, t.level, t.cause
            from unnest(cast(:codes as text[]), cast(:criticals as boolean[]), cast(:states as text[]),
                        cast(:levels as int[]), cast(:causes as text[])) as t (code, critical, state, level, cause)
            """;
    private static final String INSERT_EVENT = """
            insert into signed_event (tenant_id, signed_sheet_id, ordinal, event_code, step_code, reason, blocking)
            values (:tenant, :id, :ordinal, :code, :step, :reason, :blocking)
            """;

    private final JdbcClient jdbc;
    private final CountersignQueries countersign;

    SignedSheetStore(JdbcClient jdbc, CountersignQueries countersign) {
        this.jdbc = jdbc;
        this.countersign = countersign;
    }

    void insert(SignedSheet signed) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("id", signed.id())
                .param("sheet", signed.sheetId())
                .param("version", signed.versionNo())
                .param("content", signed.content())
                .param("hash", signed.contentHash())
                .param("signer", signed.signerId())
                .param("signerName", signed.signerName())
                .param("signerRole", signed.signerRole())
                .param("meaning", signed.meaning())
                .param("signedAt", utc(signed.signedAt()))
                .param("signedZone", signed.signedZone().getId())
                .param("receivedAt", utc(signed.receivedAt()))
                .param("programme", signed.programmeId())
                .param("site", signed.siteId())
                .param("case", signed.caseId())
                .param("caseEndedAt", utc(signed.caseEndedAt()))
                .param("trainee", signed.traineeId())
                .param("rubric", signed.rubricVersionId())
                .param("procedure", signed.procedureCode())
                .param("band", signed.band().name())
                .param("part", signed.confirmedPart().name())
                .param("supervision", signed.givenSupervision().name())
                .param("verdict", signed.verdict().name())
                .param("late", signed.late())
                .update();
        SignedContent.read(signed.content()).countersign().forEach(reason -> countersign.insert(signed.id(), reason));
        insertSteps(
                signed.id(),
                signed.steps().stream()
                        .map(step -> StepLine.of(step.stepCode(), step.critical(), step.state()))
                        .toList());
        for (int ordinal = 0; ordinal < signed.events().size(); ordinal++) {
            insert(signed.id(), ordinal, signed.events().get(ordinal));
        }
    }

    /** All in one statement: one each took most of the time of a signature. */
    private void insertSteps(UUID id, List<StepLine> lines) {
        jdbc.sql(INSERT_STEPS)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("codes", lines.stream().map(StepLine::code).toArray(String[]::new))
                .param("criticals", lines.stream().map(StepLine::critical).toArray(Boolean[]::new))
                .param("states", lines.stream().map(StepLine::state).toArray(String[]::new))
                .param("levels", lines.stream().map(StepLine::level).toArray(Integer[]::new))
                .param(
                        "causes",
                        lines.stream()
                                .map(line -> line.cause() == null
                                        ? null
                                        : line.cause().name())
                                .toArray(String[]::new))
                .update();
    }

    private void insert(UUID id, int ordinal, SignedEvent event) {
        jdbc.sql(INSERT_EVENT)
                .param("tenant", TenantScope.require())
                .param("id", id)
                .param("ordinal", ordinal)
                .param("code", event.eventCode())
                .param("step", event.stepCode())
                .param("reason", event.reason())
                .param("blocking", event.blocking())
                .update();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
