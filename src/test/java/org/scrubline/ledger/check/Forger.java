package org.scrubline.ledger.check;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.leaf.LeafEntry;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.Frontier;
import org.scrubline.ledger.merkle.MerkleHash;
import org.scrubline.ledger.note.Checkpoint;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.SigningKey;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Makes the ledger say what the rows say now: every entry, hash and subtree anew, as the program would have. */
final class Forger {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final Attack database;
    private final @Nullable SigningKey key;
    private final Frontier leaves = new Frontier();

    /** A forger with this key signs the checkpoints anew; one without a key leaves them as they are. */
    Forger(Attack database, @Nullable SigningKey key) {
        this.database = database;
        this.key = key;
    }

    void rewrite() throws SQLException {
        database.unfetter("ledger_leaf");
        database.run("delete from ledger_node where tenant_id = :tenant");
        List<UUID> records = new ArrayList<>();
        database.column("select record_id from ledger_leaf where tenant_id = :tenant order by leaf_index")
                .forEach(record -> records.add(UUID.fromString(record)));
        for (UUID record : records) {
            rewrite(record);
        }
    }

    private void rewrite(UUID record) throws SQLException {
        String where = " where tenant_id = :tenant and record_id = '" + record + "'";
        LeafKind kind = LeafKind.valueOf(
                database.column("select kind from ledger_leaf" + where).get(0));
        if (key != null) {
            resign(kind, record, key);
        }
        LeafEntry was = LeafEntry.read(
                database.column("select entry from ledger_leaf" + where).get(0));
        Map<String, List<String>> rows = new HashMap<>();
        for (LeafKind.Rows table : kind.rows()) {
            database.run("set local timezone = 'UTC'");
            rows.put(
                    table.table(),
                    database.column("select to_jsonb(t)::text from %s t where tenant_id = :tenant and %s = '%s'"
                            .formatted(table.table(), table.key(), record)));
        }
        String entry = new LeafEntry(
                        was.schema(),
                        was.tenant(),
                        was.kind(),
                        was.record(),
                        was.at(),
                        RecordRows.of(rows).hashes())
                .json();
        byte[] hash = MerkleHash.leaf(entry);
        execute(
                "update ledger_leaf set entry = ?, leaf_hash = decode(?, 'hex') where tenant_id = ? and record_id = ?",
                entry,
                HexFormat.of().formatHex(hash),
                database.tenant,
                record);
        List<Object[]> completed = new ArrayList<>();
        leaves.add(
                hash,
                (level, position, subtree) -> completed.add(new Object[] {
                    database.tenant, level, position, HexFormat.of().formatHex(subtree)
                }));
        for (Object[] node : completed) {
            execute(
                    "insert into ledger_node (tenant_id, level, position, hash) values (?, ?, ?, decode(?, 'hex'))",
                    node);
        }
    }

    private void resign(LeafKind kind, UUID record, SigningKey forged) throws SQLException {
        if (kind == LeafKind.LEDGER_KEY) {
            String name = database.column("select verifier_key from ledger_key where id = '" + record + "'")
                    .get(0)
                    .replaceFirst("\\+.*", "");
            execute(
                    "update ledger_key set verifier_key = ? where id = ?",
                    forged.verifier(name).text(),
                    record);
        } else if (kind == LeafKind.CHECKPOINT) {
            String note = database.column("select note from ledger_checkpoint where id = '" + record + "'")
                    .get(0);
            String origin = SignedCheckpoint.parse(note).checkpoint().origin();
            Checkpoint fresh = Checkpoint.of(origin, leaves.size(), leaves.root());
            execute(
                    "update ledger_checkpoint set note = ?, root = ?, size = ? where id = ?",
                    forged.sign(fresh, origin).note(),
                    fresh.root(),
                    fresh.size(),
                    record);
        }
    }

    private void execute(String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = database.connection.prepareStatement(sql)) {
            for (int at = 0; at < values.length; at++) {
                statement.setObject(at + 1, values[at]);
            }
            statement.executeUpdate();
        }
    }

    /** Changes the text a signature covers, its hash and the hash of the reviewed part, so that all agree. */
    static String reworded(String content, String from, String to) {
        var whole = (ObjectNode) MAPPER.readTree(content.replace(from, to));
        String reviewed = CanonicalJson.canonical(whole.path("reviewed").toString());
        whole.put("reviewedHash", CanonicalJson.sha256(reviewed));
        return CanonicalJson.canonical(whole.toString());
    }
}
