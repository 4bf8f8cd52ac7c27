package org.scrubline.signoff;

import static java.util.Objects.requireNonNull;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds signed statements; the server may run no statement that changes one. */
@Repository
class StatementStore {

    private static final String COLUMNS = """
            content, content_hash, signer_id, signer_name, signer_role, meaning, signed_at, signed_zone)
            """;
    private static final String VALUES = """
            :content, :hash, :signer, :signerName, :signerRole, :meaning, :signedAt, :signedZone)
            """;
    private static final String DELEGATE = """
            insert into version_delegate (tenant_id, id, sheet_id, signed_sheet_id, delegate_id,
            """ + COLUMNS + """
            values (:tenant, :id, :sheet, :record, :person,
            """ + VALUES;
    private static final String VOID_REQUEST = """
            insert into void_request (tenant_id, id, sheet_id, signed_sheet_id, ground,
            """ + COLUMNS + """
            values (:tenant, :id, :sheet, :record, :ground,
            """ + VALUES;
    private static final String VOID_DECISION = """
            insert into void_decision (tenant_id, id, request_id, sheet_id, confirmed,
            """ + COLUMNS + """
            values (:tenant, :id, :request, :sheet, :confirmed,
            """ + VALUES;
    private static final String CONTEST = """
            insert into contest (tenant_id, id, sheet_id, signed_sheet_id, due_at,
            """ + COLUMNS + """
            values (:tenant, :id, :sheet, :record, :due,
            """ + VALUES;
    private static final String CONTEST_STEP = """
            insert into contest_step (tenant_id, id, contest_id, ordinal, kind, reviewer_id,
            """ + COLUMNS + """
            values (:tenant, :id, :contest, :ordinal, :kind, :person,
            """ + VALUES;

    private final JdbcClient jdbc;

    StatementStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void delegate(Statement statement) {
        about(DELEGATE, statement).param("person", person(statement)).update();
    }

    void voidRequest(Statement statement) {
        about(VOID_REQUEST, statement)
                .param("ground", requireNonNull(statement.content().ground()).name())
                .update();
    }

    void voidDecision(UUID request, Statement statement) {
        signed(VOID_DECISION, statement)
                .param("request", request)
                .param("sheet", statement.content().sheet())
                .param("confirmed", statement.kind() == RecordEvent.VOID_CONFIRMED)
                .update();
    }

    void contest(Statement statement, Instant due) {
        about(CONTEST, statement).param("due", utc(due)).update();
    }

    /**
     * Adds a step of a contest.
     *
     * @param ordinal its place, 1 for the first
     */
    void contestStep(UUID contest, int ordinal, Statement statement) {
        signed(CONTEST_STEP, statement)
                .param("contest", contest)
                .param("ordinal", ordinal)
                .param("kind", statement.kind().name())
                .param("person", person(statement))
                .update();
    }

    private static @Nullable UUID person(Statement statement) {
        SheetContent.Named named = statement.content().person();
        return named == null ? null : named.id();
    }

    private JdbcClient.StatementSpec about(String sql, Statement statement) {
        return signed(sql, statement)
                .param("sheet", statement.content().sheet())
                .param("record", statement.content().record().id());
    }

    private JdbcClient.StatementSpec signed(String sql, Statement statement) {
        StatementContent content = statement.content();
        return jdbc.sql(sql)
                .param("tenant", TenantScope.require())
                .param("id", statement.id())
                .param("content", statement.json())
                .param("hash", statement.hash())
                .param("signer", content.signer().id())
                .param("signerName", content.signer().name())
                .param("signerRole", content.signer().role())
                .param("meaning", content.signer().meaningKey())
                .param("signedAt", utc(content.signedAt()))
                .param("signedZone", content.signedZone().getId());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
