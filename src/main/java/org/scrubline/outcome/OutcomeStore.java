package org.scrubline.outcome;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds entries and reads them; nothing changes one. */
@Repository
class OutcomeStore {

    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('outcome ' || :case, 0))
            """;
    private static final String SELECT = """
            select id, case_id, ordinal, replaces, kind, source, entered_by, entered_at, on_day, iop, drops, acuity_lines,
                chamber, leak_test, bleb, effusion, vision, care, more_surgery, light_lost, seen_by, window_name, absence,
                lost_reason
            from outcome_entry
            where tenant_id = :tenant
            """;
    private static final String OF_CASE = SELECT + """
              and case_id = :case
            order by ordinal
            """;
    private static final String KNOWN = SELECT + """
              and case_id = any (cast(:cases as uuid[]))
              and entered_at <= :at
            order by case_id, ordinal
            """;
    private static final String INSERT = """
            insert into outcome_entry (
                tenant_id, id, case_id, ordinal, replaces, kind, source, entered_by, entered_at, on_day, iop, drops,
                acuity_lines, chamber, leak_test, bleb, effusion, vision, care, more_surgery, light_lost, seen_by,
                window_name, absence, lost_reason)
            values (
                :tenant, :id, :case_id, :ordinal, :replaces, :kind, :source, :entered_by, :entered_at, :on_day, :iop, :drops,
                :acuity_lines, :chamber, :leak_test, :bleb, :effusion, :vision, :care, :more_surgery, :light_lost, :seen_by,
                :window_name, :absence, :lost_reason)
            """;

    private final JdbcClient jdbc;

    OutcomeStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps other writers about this case waiting until the transaction ends. */
    void lock(UUID caseId) {
        jdbc.sql(LOCK).param("case", caseId.toString()).query((row, n) -> true).single();
    }

    List<OutcomeEntry> of(UUID caseId) {
        return jdbc.sql(OF_CASE)
                .param("tenant", TenantScope.require())
                .param("case", caseId)
                .query((row, n) -> EntryColumns.read(row))
                .list();
    }

    /** What was entered about cases until an instant, by case. */
    Map<UUID, List<OutcomeEntry>> known(Collection<UUID> cases, Instant at) {
        return jdbc
                .sql(KNOWN)
                .param("tenant", TenantScope.require())
                .param("cases", cases.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}")))
                .param("at", at.atOffset(ZoneOffset.UTC))
                .query((row, n) -> EntryColumns.read(row))
                .stream()
                .collect(Collectors.groupingBy(OutcomeEntry::caseId));
    }

    void insert(OutcomeEntry entry) {
        jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .params(EntryColumns.of(entry))
                .update();
    }
}
