package org.scrubline.ledger.merkle;

import java.util.ArrayList;
import java.util.List;

/**
 * Roots and proofs at any size, from the hashes of complete subtrees (RFC 9162 sections 2.1.1, 2.1.3.1 and 2.1.4.1). A
 * root or a proof reads about as many hashes as the tree is high.
 */
public final class MerkleTree {

    /** The hashes of complete subtrees, wherever they are kept. */
    @FunctionalInterface
    public interface Subtrees {

        /**
         * The hash of one subtree.
         *
         * @param level 0 for a leaf
         * @param position of the subtree among those of its level, from 0
         * @return the hash over the {@code 2^level} leaves from {@code position * 2^level}
         */
        byte[] hash(int level, long position);
    }

    private final Subtrees subtrees;

    public MerkleTree(Subtrees subtrees) {
        this.subtrees = subtrees;
    }

    /** The root over the first {@code size} leaves. */
    public byte[] root(long size) {
        return size == 0 ? MerkleHash.empty() : range(0, size);
    }

    /**
     * The hashes that lead from a leaf to the root, the leaf's sibling first.
     *
     * @param index of the leaf, 0 ≤ index < size
     */
    public List<byte[]> inclusion(long index, long size) {
        require(index >= 0 && index < size, index, size);
        List<byte[]> path = new ArrayList<>();
        include(index, 0, size, path);
        return path;
    }

    private void include(long index, long from, long to, List<byte[]> path) {
        if (to - from == 1) {
            return;
        }
        long middle = from + split(to - from);
        if (index < middle) {
            include(index, from, middle, path);
            path.add(range(middle, to));
        } else {
            include(index, middle, to, path);
            path.add(range(from, middle));
        }
    }

    /**
     * The hashes that show that the tree of {@code older} leaves is the beginning of the tree of {@code newer}.
     *
     * @param older 1 ≤ older ≤ newer
     */
    public List<byte[]> consistency(long older, long newer) {
        require(older >= 1 && older <= newer, older, newer);
        List<byte[]> path = new ArrayList<>();
        continueFrom(older, 0, newer, path);
        return path;
    }

    /** The older root need not be told while it is the left edge of the newer tree: whoever checks has it. */
    private void continueFrom(long older, long from, long to, List<byte[]> path) {
        if (older == to) {
            if (from != 0) {
                path.add(range(from, to));
            }
            return;
        }
        long middle = from + split(to - from);
        if (older <= middle) {
            continueFrom(older, from, middle, path);
            path.add(range(middle, to));
        } else {
            continueFrom(older, middle, to, path);
            path.add(range(from, middle));
        }
    }

    /** Splitting keeps every left part complete, and its start a multiple of its length. */
    private byte[] range(long from, long to) {
        long length = to - from;
        if (Long.bitCount(length) == 1) {
            int level = Long.numberOfTrailingZeros(length);
            return subtrees.hash(level, from >> level);
        }
        long middle = from + split(length);
        return MerkleHash.node(range(from, middle), range(middle, to));
    }

    /** The largest power of two below the length. */
    private static long split(long length) {
        return Long.highestOneBit(length - 1);
    }

    private static void require(boolean holds, long one, long other) {
        if (!holds) {
            throw new IllegalArgumentException("no proof of " + one + " in " + other);
        }
    }
}
