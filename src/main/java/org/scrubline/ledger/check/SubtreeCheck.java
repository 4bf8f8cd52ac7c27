package org.scrubline.ledger.check;

import java.util.HexFormat;
import java.util.Iterator;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.merkle.Frontier;

/** Compares the stored hashes of complete subtrees with the computed ones, as each becomes complete. */
final class SubtreeCheck implements Frontier.Completed {

    /** A stored subtree hash, hexadecimal. */
    record Stored(int level, long position, String hash) {

        /** The number of the leaf that completes it, from 1. */
        long end() {
            return level > 0 && level < Long.SIZE - 1 ? (position + 1) << level : Long.MAX_VALUE;
        }

        long start() {
            return (position << level) + 1;
        }

        /** Subtrees come in the order of the leaf that completes them, the smaller first. */
        private boolean before(int otherLevel, long otherEnd) {
            return end() < otherEnd || (end() == otherEnd && level < otherLevel);
        }
    }

    private final Iterator<Stored> stored;
    private final Findings findings;
    private @Nullable Stored next;

    /** Takes the stored hashes in the order of {@link Stored#end} and level. */
    SubtreeCheck(Iterator<Stored> stored, Findings findings) {
        this.stored = stored;
        this.findings = findings;
        advance();
    }

    private void advance() {
        next = stored.hasNext() ? stored.next() : null;
    }

    @Override
    public void subtree(int level, long position, byte[] hash) {
        long end = (position + 1) << level;
        while (next != null && next.before(level, end)) {
            added(next);
            advance();
        }
        if (next == null || next.level() != level || next.position() != position) {
            findings.add(Problem.SUBTREE_MISSING, "", (position << level) + 1, end);
            return;
        }
        if (!next.hash().equals(HexFormat.of().formatHex(hash))) {
            findings.add(Problem.SUBTREE_CHANGED, "", (position << level) + 1, end);
        }
        advance();
    }

    /** What is left belongs to leaves that are not there. */
    void finish() {
        while (next != null) {
            added(next);
            advance();
        }
    }

    private void added(Stored subtree) {
        findings.add(Problem.SUBTREE_ADDED, "", subtree.start(), subtree.end());
    }
}
