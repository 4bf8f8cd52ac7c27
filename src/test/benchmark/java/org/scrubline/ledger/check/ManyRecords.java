package org.scrubline.ledger.check;

import java.io.IOException;
import java.io.StringReader;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.postgresql.PGConnection;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.leaf.LeafEntry;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.Frontier;
import org.scrubline.ledger.merkle.MerkleHash;
import org.scrubline.ledger.note.Checkpoint;
import org.scrubline.ledger.note.SigningKey;
import org.scrubline.ledger.note.SigningKeys;
import org.scrubline.platform.CanonicalJson;

/** Writes many signed sheets with their steps, leaves, subtrees and checkpoints straight into the tables. */
final class ManyRecords {

    private static final int STEPS = 19;
    private static final int BATCH = 1_000;
    private static final int CHECKPOINT_EVERY = 10_000;
    private static final Instant START = Instant.parse("2020-01-01T08:00:00Z");

    private final Connection connection;
    private final UUID tenant;
    private final SigningKey key = SigningKeys.fresh();
    private final String origin;
    private final Frontier leaves = new Frontier();
    private final Map<String, StringBuilder> lines = new LinkedHashMap<>();

    ManyRecords(Connection connection, UUID tenant) {
        this.connection = connection;
        this.tenant = tenant;
        this.origin = "benchmark/ledger/" + tenant;
    }

    UUID tenant() {
        return tenant;
    }

    Known known() {
        return new Known(List.of(key.verifier(origin)), List.of());
    }

    void write(int records) throws SQLException, IOException {
        try (var statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
        }
        row(LeafKind.LEDGER_KEY, "ledger_key", map("verifier_key", key.verifier(origin).text(), "since", at(0)));
        for (int n = 0; n < records; n++) {
            sheet(n);
            if ((n + 1) % CHECKPOINT_EVERY == 0) {
                checkpoint(n);
            }
            if ((n + 1) % BATCH == 0) {
                flush();
            }
        }
        flush();
        try (var statement = connection.createStatement()) {
            statement.execute("analyze");
        }
    }

    private void checkpoint(int n) throws SQLException, IOException {
        Checkpoint checkpoint = Checkpoint.of(origin, leaves.size(), leaves.root());
        row(
                LeafKind.CHECKPOINT,
                "ledger_checkpoint",
                map(
                        "size", checkpoint.size(),
                        "root", checkpoint.root(),
                        "issued_at", at(n),
                        "note", key.sign(checkpoint, origin).note()));
    }

    private void row(LeafKind kind, String table, Map<String, Object> columns) {
        UUID id = UUID.randomUUID();
        columns.put("tenant_id", tenant.toString());
        columns.put("id", id.toString());
        leaf(kind, id, Map.of(table, List.of(columns)));
    }

    private void sheet(int n) {
        UUID id = UUID.randomUUID();
        List<Map<String, Object>> steps = new ArrayList<>();
        List<Map<String, Object>> said = new ArrayList<>();
        for (int step = 0; step < STEPS; step++) {
            String code = "TF%02d".formatted(step + 1);
            int level = 1 + (n + step) % 5;
            steps.add(map("tenant_id", tenant.toString(), "signed_sheet_id", id.toString(), "step_code", code, "critical", step % 3 == 0, "state", "SCORED", "level", level));
            Map<String, Object> line = map("code", code, "critical", step % 3 == 0, "state", "SCORED", "level", level);
            line.put("cause", null);
            said.add(line);
        }
        Map<String, Object> sheet = columns(n, id);
        String reviewed = CanonicalJson.of(reviewed(sheet, said, n));
        String content = CanonicalJson.canonical("{\"late\":false,\"reviewed\":" + reviewed + ",\"reviewedHash\":\""
                + CanonicalJson.sha256(reviewed) + "\",\"signedAt\":\"" + utc(n) + "\",\"signedZone\":\"Europe/London\"}");
        sheet.put("content", content);
        sheet.put("content_hash", CanonicalJson.sha256(content));
        leaf(LeafKind.SIGNATURE, id, Map.of("signed_sheet", List.of(sheet), "signed_step", steps));
    }

    private Map<String, Object> columns(int n, UUID id) {
        return map(
                "tenant_id", tenant.toString(),
                "id", id.toString(),
                "sheet_id", UUID.randomUUID().toString(),
                "version_no", 1,
                "signer_id", new UUID(0x4000, 0x8000000000000000L + n % 40).toString(),
                "signer_name", "Supervisor " + n % 40,
                "signer_role", "SUPERVISOR",
                "meaning", "signoff.meaning.observed",
                "signed_at", at(n),
                "signed_zone", "Europe/London",
                "received_at", at(n),
                "programme_id", new UUID(0x4000, 0x8000000000000001L).toString(),
                "site_id", new UUID(0x4000, 0x8000000000000002L).toString(),
                "case_id", UUID.randomUUID().toString(),
                "case_ended_at", at(n),
                "trainee_id", new UUID(0x4001, 0x8000000000000000L + n % 90).toString(),
                "rubric_version_id", new UUID(0x4000, 0x8000000000000003L).toString(),
                "procedure_code", "TRAB_FORNIX",
                "band", "B",
                "confirmed_part", "WHOLE_CASE",
                "given_supervision", "SCRUBBED",
                "verdict", "INDEPENDENT",
                "late", false);
    }

    private Map<String, Object> reviewed(Map<String, Object> sheet, List<Map<String, Object>> said, int n) {
        return map(
                "schema", "scrubline-sheet/1",
                "sheet", sheet.get("sheet_id"),
                "version", 1,
                "organisation", map("id", tenant.toString(), "name", "Sankt Orlin Eye Institute"),
                "rubric", map("id", sheet.get("rubric_version_id"), "procedure", "TRAB_FORNIX", "title", "Trabeculectomy, fornix-based flap", "version", "1.0", "contentHash", "0".repeat(64)),
                "operation", map("id", sheet.get("case_id"), "programme", sheet.get("programme_id"), "reference", "K7-" + n, "procedure", "TRAB_FORNIX", "eye", "LEFT", "siteCode", "OEI", "endedAt", utc(n), "endedZone", "Europe/London", "plannedSupervision", "SCRUBBED", "factors", List.of("T1", "T4"), "band", "B", "complexitySetLate", false),
                "trainee", map("id", sheet.get("trainee_id"), "name", "Trainee " + n % 90),
                "confirmedPart", "WHOLE_CASE",
                "givenSupervision", "SCRUBBED",
                "steps", said,
                "measures", List.of(map("step", "TF05", "code", "FLAP_WIDTH", "value", "4"), map("step", "TF09", "code", "EXPOSURE", "value", "2.5")),
                "events", List.of(),
                "strength", "Calm hands, and the flap was cut in one plane from beginning to end.",
                "nextStep", "Loosen the second suture earlier, before the chamber is filled again.",
                "verdict", map("verdict", "INDEPENDENT", "reasons", List.of()),
                "firstScoredAt", utc(n),
                "signer", map("id", sheet.get("signer_id"), "name", sheet.get("signer_name"), "role", "SUPERVISOR", "meaningKey", "signoff.meaning.observed", "meaning", "I observed and scored this case"));
    }

    private void leaf(LeafKind kind, UUID id, Map<String, List<Map<String, Object>>> rows) {
        Map<String, List<String>> json = new HashMap<>();
        rows.forEach((table, list) -> {
            list.forEach(row -> line(table, row));
            json.put(table, list.stream().map(CanonicalJson::of).toList());
        });
        String entry = new LeafEntry(
                        LeafEntry.SCHEMA, tenant, kind.name(), id, START, RecordRows.of(json).hashes())
                .json();
        byte[] hash = MerkleHash.leaf(entry);
        line("ledger_leaf", map("tenant_id", tenant, "leaf_index", leaves.size(), "kind", kind.name(), "record_id", id, "entry", entry, "leaf_hash", hex(hash)));
        leaves.add(hash, (level, position, subtree) -> line("ledger_node", map("tenant_id", tenant, "level", level, "position", position, "hash", hex(subtree))));
    }

    private void line(String table, Map<String, Object> row) {
        StringBuilder text = lines.computeIfAbsent(table + " (" + String.join(",", row.keySet()) + ")", name -> new StringBuilder());
        String separator = "";
        for (Object value : row.values()) {
            text.append(separator).append('"').append(value.toString().replace("\"", "\"\"")).append('"');
            separator = ",";
        }
        text.append('\n');
    }

    private void flush() throws SQLException, IOException {
        var copy = connection.unwrap(PGConnection.class).getCopyAPI();
        for (Map.Entry<String, StringBuilder> table : lines.entrySet()) {
            copy.copyIn("copy " + table.getKey() + " from stdin with (format csv)", new StringReader(table.getValue().toString()));
        }
        lines.clear();
    }

    private static Map<String, Object> map(Object... pairs) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (int at = 0; at < pairs.length; at += 2) {
            map.put((String) pairs[at], pairs[at + 1]);
        }
        return map;
    }

    private static String hex(byte[] bytes) {
        return "\\x" + HexFormat.of().formatHex(bytes);
    }

    private static String utc(int n) {
        return START.plus(Duration.ofMinutes(n)).toString();
    }

    /** As PostgreSQL writes an instant in JSON. */
    private static String at(int n) {
        return utc(n).replace("Z", "+00:00");
    }
}
