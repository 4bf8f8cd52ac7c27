package org.scrubline.ledger.merkle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class MerkleTreeTests {

    private static final int LARGEST = 64;

    /** Leaves of the law below: each its own number. */
    private static final List<byte[]> LEAVES = IntStream.range(0, LARGEST)
            .mapToObj(n -> MerkleHash.leaf(ByteBuffer.allocate(4).putInt(n).array()))
            .toList();

    private final TreeInMemory many = new TreeInMemory(LEAVES);

    static IntStream publishedSizes() {
        return IntStream.rangeClosed(0, PublishedTree.LEAVES.size());
    }

    static IntStream sizes() {
        return IntStream.rangeClosed(1, LARGEST);
    }

    @ParameterizedTest
    @MethodSource("publishedSizes")
    void rootsAreThePublishedOnes(int size) {
        TreeInMemory tree = new TreeInMemory(
                IntStream.range(0, size).mapToObj(PublishedTree::leafHash).toList());
        assertThat(tree.frontier.root()).isEqualTo(PublishedTree.ROOTS.get(size));
        assertThat(tree.tree.root(size)).isEqualTo(PublishedTree.ROOTS.get(size));
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void theFrontierHasTheRootOfTheTreeAtEverySize(int size) {
        Frontier frontier = new Frontier();
        LEAVES.subList(0, size).forEach(frontier::add);
        assertThat(frontier.size()).isEqualTo(size);
        assertThat(frontier.root()).isEqualTo(many.tree.root(size));
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void everyLeafOfEverySizeHasAPathToTheRootAndToNoOther(int size) {
        byte[] root = many.tree.root(size);
        for (int index = 0; index < size; index++) {
            List<byte[]> path = many.tree.inclusion(index, size);
            for (int claimed = -1; claimed <= size; claimed++) {
                assertThat(MerkleProof.includes(claimed, size, LEAVES.get(index), path, root))
                        .as("leaf %s of %s as %s", index, size, claimed)
                        .isEqualTo(claimed == index);
            }
            byte[] other = LEAVES.get((index + 1) % LARGEST);
            assertThat(MerkleProof.includes(index, size, other, path, root)).isFalse();
            assertThat(MerkleProof.includes(index, size, LEAVES.get(index), path, many.tree.root(size % LARGEST + 1)))
                    .isFalse();
            refuseEveryDamage(
                    path,
                    damaged -> MerkleProof.includes(size - 1, size, LEAVES.get(size - 1), damaged, root),
                    index == size - 1);
        }
    }

    @ParameterizedTest
    @MethodSource("sizes")
    void everySizeContinuesEverySmallerOneAndNoOther(int newer) {
        byte[] newerRoot = many.tree.root(newer);
        for (int older = 1; older <= newer; older++) {
            int size = older;
            byte[] olderRoot = many.tree.root(older);
            List<byte[]> path = many.tree.consistency(older, newer);
            assertThat(MerkleProof.consistent(older, newer, path, olderRoot, newerRoot))
                    .as("%s in %s", older, newer)
                    .isTrue();
            byte[] wrong = many.tree.root(older % LARGEST + 1);
            assertThat(MerkleProof.consistent(older, newer, path, wrong, newerRoot))
                    .isFalse();
            assertThat(MerkleProof.consistent(older, newer, path, olderRoot, wrong))
                    .as("%s in %s, wrong root", older, newer)
                    .isEqualTo(Arrays.equals(wrong, newerRoot));
            refuseEveryDamage(
                    path, damaged -> MerkleProof.consistent(size, newer, damaged, olderRoot, newerRoot), older < newer);
        }
    }

    private interface Check {
        boolean accepts(List<byte[]> path);
    }

    /** Each hash changed in one bit, each left out, one added at every place, one cut short. */
    private static void refuseEveryDamage(List<byte[]> path, Check check, boolean applies) {
        if (!applies) {
            return;
        }
        for (int at = 0; at < path.size(); at++) {
            List<byte[]> flipped = copy(path);
            flipped.get(at)[at % MerkleHash.LENGTH] ^= 1;
            assertThat(check.accepts(flipped)).isFalse();
            List<byte[]> shorter = copy(path);
            byte[] removed = shorter.remove(at);
            assertThat(check.accepts(shorter)).isFalse();
            shorter.add(at, Arrays.copyOf(removed, MerkleHash.LENGTH - 1));
            assertThat(check.accepts(shorter)).isFalse();
        }
        for (int at = 0; at <= path.size(); at++) {
            List<byte[]> longer = copy(path);
            longer.add(at, MerkleHash.empty());
            assertThat(check.accepts(longer)).isFalse();
        }
    }

    private static List<byte[]> copy(List<byte[]> path) {
        return new ArrayList<>(path.stream().map(byte[]::clone).toList());
    }

    @Test
    void thereIsNoProofOfWhatIsNotThere() {
        assertThatThrownBy(() -> many.tree.inclusion(3, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> many.tree.inclusion(-1, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> many.tree.consistency(4, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> many.tree.consistency(0, 3)).isInstanceOf(IllegalArgumentException.class);
    }
}
