package org.scrubline.ledger;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.leaf.LeafEntry;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** Leaves and the hashes of complete subtrees. There is no statement here that changes one. */
@Repository
class LedgerStore {

    private static final String LOCK = """
            select pg_advisory_xact_lock(hashtextextended('ledger ' || :tenant, 0))
            """;
    /** Instants are written in UTC whatever the connection's zone. */
    private static final String UTC = """
            select set_config('TimeZone', 'UTC', true)
            """;

    private static final String SIZE = """
            select coalesce(max(leaf_index) + 1, 0)
            from ledger_leaf
            where tenant_id = :tenant
            """;
    private static final String ROWS = """
            select to_jsonb(t)::text
            from %s t
            where tenant_id = :tenant
              and %s = :record
            """;
    private static final String ADD_LEAF = """
            insert into ledger_leaf (tenant_id, leaf_index, kind, record_id, entry, leaf_hash)
            values (:tenant, :index, :kind, :record, :entry, :hash)
            """;
    private static final String ADD_NODE = """
            insert into ledger_node (tenant_id, level, position, hash)
            values (:tenant, :level, :position, :hash)
            """;
    private static final String LEAF_HASH = """
            select leaf_hash
            from ledger_leaf
            where tenant_id = :tenant
              and leaf_index = :position
            """;
    private static final String NODE_HASH = """
            select hash
            from ledger_node
            where tenant_id = :tenant
              and level = :level
              and position = :position
            """;
    private static final String FIND = """
            select leaf_index, entry
            from ledger_leaf
            where tenant_id = :tenant
              and kind = :kind
              and record_id = :record
            """;

    private final JdbcClient jdbc;

    LedgerStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps other appenders of the organisation waiting until the transaction ends. */
    void lock() {
        jdbc.sql(LOCK)
                .param("tenant", TenantScope.require().toString())
                .query((row, n) -> true)
                .single();
    }

    long size() {
        return sql(SIZE).query(Long.class).single();
    }

    RecordRows rows(LeafKind kind, UUID record) {
        jdbc.sql(UTC).query(String.class).single();
        Map<String, List<String>> byTable = new HashMap<>();
        for (LeafKind.Rows rows : kind.rows()) {
            byTable.put(
                    rows.table(),
                    sql(ROWS.formatted(rows.table(), rows.key()))
                            .param("record", record)
                            .query(String.class)
                            .list());
        }
        return RecordRows.of(byTable);
    }

    void addLeaf(long index, LeafEntry entry, String json, byte[] hash) {
        sql(ADD_LEAF)
                .param("index", index)
                .param("kind", entry.kind())
                .param("record", entry.record())
                .param("entry", json)
                .param("hash", hash)
                .update();
    }

    void addNode(int level, long position, byte[] hash) {
        sql(ADD_NODE)
                .param("level", level)
                .param("position", position)
                .param("hash", hash)
                .update();
    }

    /** The hash of the complete subtree of {@code 2^level} leaves at this position; level 0 is a leaf. */
    byte[] hash(int level, long position) {
        StatementSpec statement = level == 0 ? sql(LEAF_HASH) : sql(NODE_HASH).param("level", level);
        return statement.param("position", position).query(byte[].class).single();
    }

    Optional<LeafReceipt> find(LeafKind kind, UUID record) {
        return sql(FIND)
                .param("kind", kind.name())
                .param("record", record)
                .query((row, n) -> new LeafReceipt(row.getLong("leaf_index"), row.getString("entry")))
                .optional();
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
