package org.scrubline.casework;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseReceipt.Aside;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

@Repository
class CaseSubmissionStore {

    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('case ' || :submission, 0))
            """;
    private static final String HOLD = """
            select id
            from case_submission
            where tenant_id = :tenant
              and id = :id
            for update
            """;
    private static final String KNOWN = """
            select count(*)
            from case_submission
            where tenant_id = :tenant
              and submission_id = :submission
            """;
    private static final String RECEIPTS = """
            select s.content_hash, s.case_id, s.aside, coalesce(c.reference, s.reference) as reference
            from case_submission s
            left join surgical_case c on c.tenant_id = s.tenant_id and c.id = s.case_id
            where s.tenant_id = :tenant
              and s.submission_id = :submission
              and s.sent_by = :by
            order by s.received_at, s.id
            """;
    private static final String ADD = """
            insert into case_submission (
                tenant_id, id, submission_id, content_hash, content, reference, programme_id, sent_by, kept_at, kept_zone,
                page_ms, waited_ms, received_at, case_id, aside)
            values (:tenant, :id, :submission, :hash, :content, :reference, :programme, :by, :keptAt, :zone, :page,
                :waited, :at, :case, :aside)
            """;
    private static final String ASIDES = """
            select s.id, s.programme_id, s.reference, s.content, s.aside, s.received_at, c.reference as entered_as
            from case_submission s
            left join case_submission f
                on f.tenant_id = s.tenant_id
               and f.submission_id = s.submission_id
               and f.sent_by = s.sent_by
               and f.aside is null
            left join surgical_case c on c.tenant_id = f.tenant_id and c.id = f.case_id
            where s.tenant_id = :tenant
              and s.sent_by = :by
              and s.aside is not null
              and s.settled_at is null
            order by s.received_at, s.id
            """;
    private static final String SETTLE = """
            update case_submission
            set case_id = :case,
                settled_at = :at,
                settled_by = :by
            where tenant_id = :tenant
              and id = :id
              and settled_at is null
            """;

    private final JdbcClient jdbc;

    CaseSubmissionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps every other sending of the same id waiting until the transaction ends. */
    void lock(UUID submission) {
        jdbc.sql(LOCK).param("submission", submission).query((row, n) -> 1).single();
    }

    /** Keeps others from settling it until the transaction ends. */
    void hold(UUID id) {
        sql(HOLD).param("id", id).query(UUID.class).optional();
    }

    /** Whether anything came under this id, from whomever. */
    boolean known(UUID submission) {
        return sql(KNOWN).param("submission", submission).query(Long.class).single() > 0;
    }

    List<CaseReceipt> receipts(UUID submission, UUID by) {
        return sql(RECEIPTS)
                .param("submission", submission)
                .param("by", by)
                .query((row, n) -> receipt(row))
                .list();
    }

    CaseReceipt add(
            CaseSubmission sent, UUID by, CaseEntry entry, @Nullable UUID entered, @Nullable Aside why, Instant at) {
        sql(ADD).param("id", UUID.randomUUID())
                .param("submission", sent.id())
                .param("hash", sent.hash())
                .param("content", sent.content())
                .param("reference", entry.reference())
                .param("programme", entry.programmeId())
                .param("by", by)
                .param("keptAt", utc(sent.kept().at()))
                .param("zone", sent.kept().zone())
                .param("page", sent.kept().pageMillis())
                .param("waited", sent.kept().waitedMillis())
                .param("at", utc(at))
                .param("case", entered)
                .param("aside", why == null ? null : why.name())
                .update();
        return new CaseReceipt(sent.hash(), entered, entry.reference(), why);
    }

    List<CaseAside> asides(UUID by) {
        return sql(ASIDES).param("by", by).query((row, n) -> aside(row)).list();
    }

    /** False when it was settled before. */
    boolean settle(UUID id, @Nullable UUID entered, UUID by, Instant at) {
        return sql(SETTLE)
                        .param("id", id)
                        .param("case", entered)
                        .param("by", by)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    private static CaseReceipt receipt(ResultSet row) throws SQLException {
        String aside = row.getString("aside");
        return new CaseReceipt(
                row.getString("content_hash"),
                row.getObject("case_id", UUID.class),
                row.getString("reference"),
                aside == null ? null : Aside.valueOf(aside));
    }

    private static CaseAside aside(ResultSet row) throws SQLException {
        return new CaseAside(
                row.getObject("id", UUID.class),
                row.getObject("programme_id", UUID.class),
                row.getString("reference"),
                row.getString("content"),
                Aside.valueOf(row.getString("aside")),
                row.getObject("received_at", OffsetDateTime.class).toInstant(),
                row.getString("entered_as"));
    }
}
