package org.scrubline.ledger.check;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RowsHash;
import tools.jackson.databind.JsonNode;

/** Compares the audit trail with its seals. Seals are few, entries are many: these are read once, in order. */
final class SealCheck {

    private static final String KIND = LeafKind.AUDIT_SEAL.name();

    private final Findings findings;
    private final List<Seal> seals = new ArrayList<>();
    private int next;
    private RowsHash hash = new RowsHash();
    private long unsealed;

    SealCheck(Findings findings) {
        this.findings = findings;
    }

    private record Seal(UUID record, long after, long last, long entries, String rowsHash) {}

    /** The rows of a leaf about a seal. */
    void seal(PreparedLeaf leaf) {
        if (leaf.rows() != null) {
            leaf.rows().rows(LeafKind.AUDIT_SEAL.rows().get(0).table()).forEach(row -> {
                JsonNode columns = row.columns();
                seals.add(new Seal(
                        leaf.leaf().record(),
                        columns.path("after_sequence").asLong(-1),
                        columns.path("last_sequence").asLong(-1),
                        columns.path("entries").asLong(-1),
                        columns.path("rows_hash").asString("")));
            });
        }
    }

    /** Reads the trail; answers how many entries wait for the next seal. */
    long run(EvidenceQueries queries) throws SQLException {
        seals.sort(Comparator.comparingLong(Seal::last));
        long sealed = 0;
        for (Seal seal : seals) {
            if (seal.after() != sealed) {
                findings.add(Problem.SEAL_PLACE, KIND, seal.record());
            }
            sealed = seal.last();
        }
        queries.auditEntries(this::entry);
        while (next < seals.size()) {
            close();
        }
        return unsealed;
    }

    private void entry(EvidenceQueries.AuditEntry entry) {
        while (next < seals.size() && entry.sequence() > seals.get(next).last()) {
            close();
        }
        if (next < seals.size()) {
            hash.add(entry.json());
        } else {
            unsealed++;
        }
    }

    private void close() {
        Seal seal = seals.get(next);
        long count = hash.count();
        if (count != seal.entries() || !hash.hex().equals(seal.rowsHash())) {
            findings.add(
                    Problem.SEAL_BROKEN, KIND, seal.record(), seal.after() + 1, seal.last(), seal.entries(), count);
        }
        next++;
        hash = new RowsHash();
    }
}
