package org.scrubline.ledger.check;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;

/**
 * Reads the evidence of one organisation over a connection of its own transaction, in the server or out of it. Large
 * answers come through cursors, which need {@code autocommit} off.
 */
final class EvidenceQueries {

    /** Rows fetched at a time. */
    private static final int FETCH = 1000;
    /** Records without a leaf that are worth naming. */
    private static final int NAMED = Findings.KEPT + 1;

    private static final String SCOPE = """
            select set_config('scrubline.tenant', ?, true), set_config('TimeZone', 'UTC', true)
            """;
    /** With the rights of the server only the first half answers. */
    private static final String ORGANISATIONS = """
            select tenant_id
            from account_organisation
            union
            select tenant_id
            from ledger_leaf
            order by tenant_id
            """;

    private static final String LEAVES = """
            select leaf_index, kind, record_id, entry, leaf_hash
            from ledger_leaf
            where tenant_id = ?
            order by leaf_index
            """;
    private static final String NODES = """
            select level, position, hash
            from ledger_node
            where tenant_id = ?
            order by (position + 1) << level, level
            """;
    private static final String KEYS = """
            select verifier_key
            from ledger_key
            where tenant_id = ?
            order by since, verifier_key
            """;
    private static final String ROWS = """
            select t.%2$s, to_jsonb(t)::text
            from %1$s t
            where t.tenant_id = ?
              and t.%2$s = any (?)
            """;
    private static final String AUDIT = """
            select t.sequence, to_jsonb(t)::text
            from audit_entry t
            where t.tenant_id = ?
            order by t.sequence
            """;
    private static final String WITHOUT_LEAF = """
            select distinct t.%2$s
            from %1$s t
            where t.tenant_id = ?
              and not exists (select 1
                              from ledger_leaf l
                              where l.tenant_id = t.tenant_id
                                and l.kind = ?
                                and l.record_id = t.%2$s)
            limit ?
            """;

    /** Takes what a cursor has come to. */
    interface Each<T> {
        void accept(T row) throws SQLException;
    }

    private final Connection connection;
    private final UUID tenant;

    EvidenceQueries(Connection connection, UUID tenant) throws SQLException {
        this.connection = connection;
        this.tenant = tenant;
        try (PreparedStatement statement = connection.prepareStatement(SCOPE)) {
            statement.setString(1, tenant.toString());
            statement.execute();
        }
    }

    static List<UUID> organisations(Connection connection) throws SQLException {
        List<UUID> organisations = new ArrayList<>();
        try (PreparedStatement statement = connection.prepareStatement(ORGANISATIONS);
                ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                organisations.add(rows.getObject(1, UUID.class));
            }
        }
        return organisations;
    }

    List<String> keys() throws SQLException {
        List<String> keys = new ArrayList<>();
        try (PreparedStatement statement = prepare(KEYS);
                ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                keys.add(rows.getString(1));
            }
        }
        return keys;
    }

    /** Every leaf in order, with its rows, some hundred at a time. */
    void leaves(int batch, Each<List<EvidenceLeaf>> each) throws SQLException {
        try (PreparedStatement statement = prepare(LEAVES);
                ResultSet rows = statement.executeQuery()) {
            List<EvidenceLeaf> bare = new ArrayList<>(batch);
            while (rows.next()) {
                bare.add(leaf(rows));
                if (bare.size() == batch) {
                    each.accept(withRows(bare));
                    bare.clear();
                }
            }
            if (!bare.isEmpty()) {
                each.accept(withRows(bare));
            }
        }
    }

    private static EvidenceLeaf leaf(ResultSet row) throws SQLException {
        return new EvidenceLeaf(
                row.getLong("leaf_index"),
                row.getString("kind"),
                row.getObject("record_id", UUID.class),
                row.getString("entry"),
                HexFormat.of().formatHex(row.getBytes("leaf_hash")),
                new HashMap<>());
    }

    private List<EvidenceLeaf> withRows(List<EvidenceLeaf> leaves) throws SQLException {
        for (LeafKind kind : LeafKind.values()) {
            Map<UUID, EvidenceLeaf> ofKind = new HashMap<>();
            leaves.stream()
                    .filter(leaf -> leaf.kind().equals(kind.name()))
                    .forEach(leaf -> ofKind.putIfAbsent(leaf.record(), leaf));
            if (!ofKind.isEmpty()) {
                for (LeafKind.Rows table : kind.rows()) {
                    addRows(table, ofKind);
                }
            }
        }
        return List.copyOf(leaves);
    }

    private void addRows(LeafKind.Rows table, Map<UUID, EvidenceLeaf> leaves) throws SQLException {
        try (PreparedStatement statement = prepare(ROWS.formatted(table.table(), table.key()))) {
            statement.setArray(
                    2, connection.createArrayOf("uuid", leaves.keySet().toArray()));
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    EvidenceLeaf leaf = leaves.get(rows.getObject(1, UUID.class));
                    if (leaf != null) {
                        leaf.rows()
                                .computeIfAbsent(table.table(), name -> new ArrayList<>())
                                .add(rows.getString(2));
                    }
                }
            }
        }
    }

    /** An entry of the audit trail, JSON of its row. */
    record AuditEntry(long sequence, String json) {}

    /** Every entry of the audit trail in order. */
    void auditEntries(Each<AuditEntry> each) throws SQLException {
        try (PreparedStatement statement = prepare(AUDIT);
                ResultSet rows = statement.executeQuery()) {
            while (rows.next()) {
                each.accept(new AuditEntry(rows.getLong(1), rows.getString(2)));
            }
        }
    }

    /** Subtree hashes in the order in which leaves complete them. */
    NodeCursor nodes() throws SQLException {
        return new NodeCursor(prepare(NODES));
    }

    /** Records of this table that no leaf of the kind fixes, the first hundred. */
    List<UUID> withoutLeaf(LeafKind kind, LeafKind.Rows table) throws SQLException {
        List<UUID> records = new ArrayList<>();
        try (PreparedStatement statement = prepare(WITHOUT_LEAF.formatted(table.table(), table.key()))) {
            statement.setString(2, kind.name());
            statement.setInt(3, NAMED);
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    records.add(rows.getObject(1, UUID.class));
                }
            }
        }
        return records;
    }

    private PreparedStatement prepare(String sql) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        statement.setFetchSize(FETCH);
        statement.setObject(1, tenant);
        return statement;
    }
}
