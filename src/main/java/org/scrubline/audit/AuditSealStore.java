package org.scrubline.audit;

import java.time.ZoneOffset;
import java.util.UUID;
import org.scrubline.ledger.RowsHash;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Seals of the audit trail. There is no statement here that changes one. */
@Repository
class AuditSealStore {

    /** A writer holds this lock, shared, from before its sequence number is drawn until its transaction ends. */
    static final String WRITING = """
            select pg_advisory_xact_lock_shared(hashtextextended('audit ' || :scope, 0))
            """;

    private static final String NOBODY_WRITES = """
            select pg_try_advisory_xact_lock(hashtextextended('audit ' || :scope, 0))
            """;
    private static final String LAST = """
            select coalesce(max(sequence), 0)
            from audit_entry
            where tenant_id = :tenant
            """;
    private static final String SEALED = """
            select coalesce(max(last_sequence), 0)
            from audit_seal
            where tenant_id = :tenant
            """;
    /** Instants are written in UTC whatever the connection's zone. */
    private static final String UTC = """
            select set_config('TimeZone', 'UTC', true)
            """;

    private static final String ENTRIES = """
            select to_jsonb(t)::text
            from audit_entry t
            where tenant_id = :tenant
              and sequence > :after
              and sequence <= :last
            order by sequence
            """;
    private static final String INSERT = """
            insert into audit_seal (tenant_id, id, after_sequence, last_sequence, entries, rows_hash, sealed_at)
            values (:tenant, :id, :after, :last, :entries, :hash, :at)
            """;

    private final JdbcClient jdbc;

    AuditSealStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Whether no transaction is writing entries of the organisation at this moment; then none begins before this
     * transaction ends. Never waits, so it can neither hold writers up nor be part of a deadlock.
     */
    boolean nobodyWrites() {
        return jdbc.sql(NOBODY_WRITES)
                .param("scope", TenantScope.require().toString())
                .query(Boolean.class)
                .single();
    }

    long last() {
        return sql(LAST).query(Long.class).single();
    }

    /** The number up to which entries are sealed; 0 when none is. */
    long sealed() {
        return sql(SEALED).query(Long.class).single();
    }

    RowsHash hash(long after, long last) {
        jdbc.sql(UTC).query(String.class).single();
        RowsHash hash = new RowsHash();
        try (var rows = sql(ENTRIES).param("after", after).param("last", last).query(String.class).stream()) {
            rows.forEach(hash::add);
        }
        return hash;
    }

    void insert(AuditSeal seal) {
        sql(INSERT)
                .param("id", seal.id())
                .param("after", seal.after())
                .param("last", seal.last())
                .param("entries", seal.entries())
                .param("hash", seal.rowsHash())
                .param("at", seal.sealedAt().atOffset(ZoneOffset.UTC))
                .update();
    }

    private StatementSpec sql(String text) {
        UUID tenant = TenantScope.require();
        return jdbc.sql(text).param("tenant", tenant);
    }
}
