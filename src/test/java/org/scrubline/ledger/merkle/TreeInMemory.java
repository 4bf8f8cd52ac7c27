package org.scrubline.ledger.merkle;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A tree whose subtree hashes are kept in memory. */
final class TreeInMemory {

    private final Map<String, byte[]> subtrees = new HashMap<>();
    final MerkleTree tree = new MerkleTree((level, position) -> subtrees.get(level + "/" + position));
    final Frontier frontier = new Frontier();

    TreeInMemory(List<byte[]> leafHashes) {
        for (byte[] hash : leafHashes) {
            subtrees.put("0/" + frontier.size(), hash);
            frontier.add(hash, (level, position, subtree) -> subtrees.put(level + "/" + position, subtree));
        }
    }
}
