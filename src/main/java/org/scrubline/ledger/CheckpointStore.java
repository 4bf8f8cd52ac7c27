package org.scrubline.ledger;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.note.Checkpoint;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Checkpoints and the public keys behind them. There is no statement here that changes one. */
@Repository
class CheckpointStore {

    private static final String NEWEST = """
            select size, issued_at, note
            from ledger_checkpoint
            where tenant_id = :tenant
            order by size desc
            limit 1
            """;
    private static final String ADD = """
            insert into ledger_checkpoint (tenant_id, id, size, root, issued_at, note)
            values (:tenant, :id, :size, :root, :at, :note)
            """;
    private static final String KEYS = """
            select verifier_key
            from ledger_key
            where tenant_id = :tenant
            order by since, verifier_key
            """;
    private static final String ADD_KEY = """
            insert into ledger_key (tenant_id, id, verifier_key, since)
            values (:tenant, :id, :key, :at)
            """;

    private final JdbcClient jdbc;

    CheckpointStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<IssuedCheckpoint> newest() {
        return sql(NEWEST)
                .query((row, n) -> new IssuedCheckpoint(
                        row.getLong("size"),
                        row.getObject("issued_at", OffsetDateTime.class).toInstant(),
                        row.getString("note")))
                .optional();
    }

    void add(UUID id, Checkpoint checkpoint, IssuedCheckpoint issued) {
        sql(ADD).param("id", id)
                .param("size", checkpoint.size())
                .param("root", checkpoint.root())
                .param("at", issued.issuedAt().atOffset(ZoneOffset.UTC))
                .param("note", issued.note())
                .update();
    }

    /** Oldest first. */
    List<String> keys() {
        return sql(KEYS).query(String.class).list();
    }

    void addKey(UUID id, String verifierKey, Instant since) {
        sql(ADD_KEY)
                .param("id", id)
                .param("key", verifierKey)
                .param("at", since.atOffset(ZoneOffset.UTC))
                .update();
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
