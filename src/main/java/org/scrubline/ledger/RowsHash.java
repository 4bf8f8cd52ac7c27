package org.scrubline.ledger;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.scrubline.ledger.leaf.RecordRows;

/**
 * SHA-256 of the canonical JSON array of rows that are too many to hold, in the order they are added; otherwise the hash
 * of {@link RecordRows#hashes}.
 */
public final class RowsHash {

    private final MessageDigest digest;
    private long count;

    public RowsHash() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is part of every JDK", e);
        }
    }

    /** Adds a row, JSON as the database writes it. */
    public void add(String json) {
        digest.update((count == 0 ? "[" : ",").getBytes(StandardCharsets.UTF_8));
        digest.update(RecordRows.row(json).text().getBytes(StandardCharsets.UTF_8));
        count++;
    }

    /** How many rows were added. */
    public long count() {
        return count;
    }

    /** Of what was added, in lower-case hexadecimal; nothing can be added afterwards. */
    public String hex() {
        digest.update((count == 0 ? "[]" : "]").getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest.digest());
    }
}
