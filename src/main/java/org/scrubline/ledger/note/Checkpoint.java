package org.scrubline.ledger.note;

import java.util.Base64;
import java.util.List;
import org.scrubline.ledger.merkle.MerkleHash;

/**
 * The state of a ledger at one size: who holds it can tell later whether the first {@code size} leaves still are what they
 * were.
 *
 * @param origin which ledger
 * @param size leaves it covers
 * @param root base64 of the root over them
 */
public record Checkpoint(String origin, long size, String root) {

    public static Checkpoint of(String origin, long size, byte[] root) {
        return new Checkpoint(origin, size, Base64.getEncoder().encodeToString(root));
    }

    /** Three lines, the note that is signed. */
    public String text() {
        return origin + "\n" + size + "\n" + root + "\n";
    }

    public byte[] rootHash() {
        return Base64.getDecoder().decode(root);
    }

    /** Whether this is the checkpoint of a ledger with this root at this size. */
    public boolean hasRoot(byte[] other) {
        return root.equals(Base64.getEncoder().encodeToString(other));
    }

    /**
     * Reads the text of a note; lines after the third are extensions and are passed over.
     *
     * @throws IllegalArgumentException when it is no checkpoint
     */
    static Checkpoint parse(String text) {
        List<String> lines = text.lines().toList();
        if (lines.size() < 3 || lines.stream().anyMatch(String::isEmpty)) {
            throw new IllegalArgumentException("a checkpoint has at least three lines and none is empty");
        }
        if (!lines.get(1).matches("0|[1-9][0-9]{0,17}")) {
            throw new IllegalArgumentException("the second line of a checkpoint is a number of leaves");
        }
        Checkpoint read = new Checkpoint(lines.get(0), Long.parseLong(lines.get(1)), lines.get(2));
        if (read.rootHash().length != MerkleHash.LENGTH) {
            throw new IllegalArgumentException("the third line of a checkpoint is a SHA-256 hash in base64");
        }
        return read;
    }
}
