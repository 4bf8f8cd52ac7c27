package org.scrubline.ledger.merkle;

import java.util.Arrays;
import java.util.List;

/** Checks proofs after RFC 9162 sections 2.1.3.2 and 2.1.4.2. Whatever is malformed is no proof; nothing is thrown. */
public final class MerkleProof {

    private MerkleProof() {}

    /**
     * Whether the path leads from this leaf to this root.
     *
     * @param index of the leaf
     * @param size leaves of the tree
     * @param leafHash see {@link MerkleHash#leaf(byte[])}
     * @param path the leaf's sibling first
     */
    public static boolean includes(long index, long size, byte[] leafHash, List<byte[]> path, byte[] root) {
        if (index < 0 || index >= size || !wellFormed(leafHash) || !wellFormed(path)) {
            return false;
        }
        Walk walk = new Walk(index, size - 1);
        byte[] hash = leafHash;
        for (byte[] sibling : path) {
            if (walk.atTop()) {
                return false;
            }
            hash = walk.siblingIsLeft() ? MerkleHash.node(sibling, hash) : MerkleHash.node(hash, sibling);
            walk.up();
        }
        return walk.atTop() && Arrays.equals(hash, root);
    }

    /**
     * Whether the path shows that a tree of {@code newer} leaves continues one of {@code older}. Every tree continues the
     * empty one.
     */
    public static boolean consistent(long older, long newer, List<byte[]> path, byte[] olderRoot, byte[] newerRoot) {
        if (older < 0 || older > newer || !wellFormed(path)) {
            return false;
        }
        if (older == newer) {
            return path.isEmpty() && Arrays.equals(olderRoot, newerRoot);
        }
        if (older == 0) {
            return path.isEmpty();
        }
        return !path.isEmpty() && continues(older, newer, path, olderRoot, newerRoot);
    }

    private static boolean continues(long older, long newer, List<byte[]> path, byte[] olderRoot, byte[] newerRoot) {
        Walk walk = new Walk(older - 1, newer - 1);
        walk.toRightEdge();
        boolean told = Long.bitCount(older) != 1;
        byte[] was = told ? path.get(0) : olderRoot;
        byte[] is = was;
        for (byte[] hash : path.subList(told ? 1 : 0, path.size())) {
            if (walk.atTop()) {
                return false;
            }
            if (walk.siblingIsLeft()) {
                was = MerkleHash.node(hash, was);
                is = MerkleHash.node(hash, is);
            } else {
                is = MerkleHash.node(is, hash);
            }
            walk.up();
        }
        return walk.atTop() && Arrays.equals(was, olderRoot) && Arrays.equals(is, newerRoot);
    }

    private static boolean wellFormed(List<byte[]> path) {
        return path.stream().allMatch(MerkleProof::wellFormed);
    }

    private static boolean wellFormed(byte[] hash) {
        return hash.length == MerkleHash.LENGTH;
    }

    /** The way up: {@code node} from the leaf or edge, {@code last} along the right edge of the tree. */
    private static final class Walk {

        private long node;
        private long last;

        Walk(long node, long last) {
            this.node = node;
            this.last = last;
        }

        boolean atTop() {
            return last == 0;
        }

        boolean siblingIsLeft() {
            return (node & 1) == 1 || node == last;
        }

        /** On the right edge a node without a sibling is its own parent, so levels are skipped until it has one. */
        void up() {
            if ((node & 1) == 0 && node == last) {
                while ((node & 1) == 0 && node != 0) {
                    shift();
                }
            }
            shift();
        }

        void toRightEdge() {
            while ((node & 1) == 1) {
                shift();
            }
        }

        private void shift() {
            node >>= 1;
            last >>= 1;
        }
    }
}
