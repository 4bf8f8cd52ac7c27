package org.scrubline.ledger.check;

import java.util.HexFormat;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.CredentialCheck;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.leaf.LeafEntry;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.MerkleHash;

/**
 * A leaf with everything about it that can be computed without its neighbours, which is most of the work.
 *
 * @param hash of its entry, hexadecimal
 * @param said what the entry says; null when it cannot be read
 * @param rows its rows; null when they cannot be read
 * @param looks what the rooms' own checks see in them
 * @param assertionStands whether it holds a passkey's signature that stands for its challenge; false for other kinds
 */
record PreparedLeaf(
        EvidenceLeaf leaf,
        String hash,
        @Nullable LeafEntry said,
        @Nullable RecordRows rows,
        SortedMap<String, String> rowHashes,
        List<RecordCheck.Look> looks,
        boolean assertionStands) {

    static PreparedLeaf of(EvidenceLeaf leaf, Looks looks) {
        RecordRows rows = rows(leaf);
        return new PreparedLeaf(
                leaf,
                HexFormat.of().formatHex(MerkleHash.leaf(leaf.entry())),
                said(leaf),
                rows,
                rows == null ? new TreeMap<>() : rows.hashes(),
                rows == null ? List.of() : looks.at(leaf, rows),
                rows != null && assertionStands(rows));
    }

    private static boolean assertionStands(RecordRows rows) {
        return rows.rows(AssertionPairs.TABLE).stream()
                .findFirst()
                .flatMap(row -> AssertionPairs.read(row.columns()))
                .filter(CredentialCheck::stands)
                .isPresent();
    }

    private static @Nullable LeafEntry said(EvidenceLeaf leaf) {
        try {
            return LeafEntry.read(leaf.entry());
        } catch (RuntimeException noEntry) {
            return null;
        }
    }

    private static @Nullable RecordRows rows(EvidenceLeaf leaf) {
        try {
            return RecordRows.of(leaf.rows());
        } catch (RuntimeException noRows) {
            return null;
        }
    }

    /** Whether the entry is about what the leaf is filed under. */
    boolean isAbout(UUID tenant) {
        return said != null
                && said.tenant().equals(tenant)
                && said.kind().equals(leaf.kind())
                && said.record().equals(leaf.record());
    }
}
