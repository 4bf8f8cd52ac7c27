package org.scrubline.ledger.merkle;

/** Builds a tree leaf by leaf and remembers only the complete subtrees along its right edge: 64 hashes at most. */
public final class Frontier {

    /** Is told each subtree as it becomes complete. */
    @FunctionalInterface
    public interface Completed {
        void subtree(int level, long position, byte[] hash);
    }

    private final byte[][] edge = new byte[Long.SIZE][];
    private long size;

    /** Leaves so far. */
    public long size() {
        return size;
    }

    /**
     * Adds the next leaf.
     *
     * @param completed is told the subtrees of two leaves and more that this leaf completes, the smallest first
     */
    public void add(byte[] leafHash, Completed completed) {
        byte[] hash = leafHash;
        long position = size;
        int level = 0;
        while ((position & 1) == 1) {
            hash = MerkleHash.node(edge[level], hash);
            position >>= 1;
            level++;
            completed.subtree(level, position, hash);
        }
        edge[level] = hash;
        size++;
    }

    public void add(byte[] leafHash) {
        add(leafHash, (level, position, hash) -> {});
    }

    /** The root over the leaves so far. */
    public byte[] root() {
        if (size == 0) {
            return MerkleHash.empty();
        }
        int level = Long.numberOfTrailingZeros(size);
        byte[] hash = edge[level];
        for (long rest = size >> (level + 1); rest != 0; rest >>= 1) {
            level++;
            if ((rest & 1) == 1) {
                hash = MerkleHash.node(edge[level], hash);
            }
        }
        return hash;
    }
}
