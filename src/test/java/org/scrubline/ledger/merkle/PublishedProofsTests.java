package org.scrubline.ledger.merkle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.ledger.merkle.PublishedTree.ROOTS;
import static org.scrubline.ledger.merkle.PublishedTree.hex;
import static org.scrubline.ledger.merkle.PublishedTree.leafHash;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The published proofs of the transparency-dev project with every way in which it damages them, and its cases without a
 * proof: github.com/transparency-dev/merkle, proof/verify_test.go, commit 02194e9afb6c1d95b5381350007963aa70fff472
 * (Apache License 2.0). They are what that project writes out as testdata/inclusion and testdata/consistency. A file of
 * each kind (inclusion/1/happy-path, consistency/1/happy-path) was compared with these figures.
 */
class PublishedProofsTests {

    private static final byte[] SOME =
            HexFormat.of().parseHex("abacaba000000000000000000000000000000000000000000060061e00123456");
    private static final byte[] EMPTY = ROOTS.get(0);
    private static final byte[] NONE = {};
    private static final byte[] WRONG_LEAF = ascii("WrongLeaf");
    private static final byte[] WRONG_ROOT = ascii("WrongRoot");

    private record Inclusion(
            String name, long index, long size, byte[] root, byte[] leaf, List<byte[]> path, boolean holds) {

        DynamicTest test() {
            return DynamicTest.dynamicTest(
                    name,
                    () -> assertThat(MerkleProof.includes(index, size, leaf, path, root))
                            .isEqualTo(holds));
        }
    }

    private record Consistency(
            String name, long older, long newer, byte[] olderRoot, byte[] newerRoot, List<byte[]> path, boolean holds) {

        DynamicTest test() {
            return DynamicTest.dynamicTest(
                    name,
                    () -> assertThat(MerkleProof.consistent(older, newer, path, olderRoot, newerRoot))
                            .isEqualTo(holds));
        }
    }

    private static List<Inclusion> inclusions() {
        List<Inclusion> all = new ArrayList<>();
        all.addAll(damaged(0, 1));
        all.addAll(damaged(
                0,
                8,
                "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4"));
        all.addAll(damaged(
                5,
                8,
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"));
        all.addAll(damaged(2, 3, "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125"));
        all.addAll(damaged(
                1,
                5,
                "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b"));
        all.addAll(ofOneLeaf());
        for (long[] place : new long[][] {{0, 0}, {0, 1}, {1, 0}, {2, 1}}) {
            String name = place[0] + " in " + place[1];
            all.add(new Inclusion(name + ", no root", place[0], place[1], NONE, SOME, List.of(), false));
            all.add(new Inclusion(name + ", no leaf", place[0], place[1], EMPTY, NONE, List.of(), false));
            all.add(new Inclusion(name + ", empty root", place[0], place[1], EMPTY, SOME, List.of(), false));
        }
        return all;
    }

    private static List<Inclusion> ofOneLeaf() {
        byte[] leaf = MerkleHash.leaf(ascii("data"));
        return List.of(
                new Inclusion("one leaf", 0, 1, leaf, leaf, List.of(), true),
                new Inclusion("one leaf, no leaf hash", 0, 1, leaf, NONE, List.of(), false),
                new Inclusion("one leaf, no root", 0, 1, NONE, leaf, List.of(), false),
                new Inclusion("one leaf, neither", 0, 1, NONE, NONE, List.of(), false));
    }

    private static List<Inclusion> damaged(int i, int n, String... proof) {
        List<byte[]> path = hex(proof);
        byte[] root = ROOTS.get(n);
        byte[] leaf = leafHash(i);
        String name = i + " in " + n + ", ";
        List<Inclusion> all = new ArrayList<>(List.of(
                new Inclusion(name + "happy path", i, n, root, leaf, path, true),
                new Inclusion(name + "index - 1", i - 1, n, root, leaf, path, false),
                new Inclusion(name + "index + 1", i + 1, n, root, leaf, path, false),
                new Inclusion(name + "index ^ 2", i ^ 2, n, root, leaf, path, false),
                new Inclusion(name + "size * 2", i, n * 2L, root, leaf, path, false),
                new Inclusion(name + "size / 2", i, n / 2, root, leaf, path, false),
                new Inclusion(name + "wrong leaf", i, n, root, WRONG_LEAF, path, false),
                new Inclusion(name + "empty root", i, n, EMPTY, leaf, path, false),
                new Inclusion(name + "random root", i, n, SOME, leaf, path, false)));
        around(path, root).forEach(wrong -> all.add(new Inclusion(name + "garbage", i, n, root, leaf, wrong, false)));
        flipped(path, 8).forEach(wrong -> all.add(new Inclusion(name + "flipped", i, n, root, leaf, wrong, false)));
        if (!path.isEmpty()) {
            List<byte[]> shorter = path.subList(0, path.size() - 1);
            all.add(new Inclusion(name + "removed component", i, n, root, leaf, shorter, false));
        }
        if (path.size() > 1) {
            List<byte[]> longer = new ArrayList<>(path);
            longer.add(1, SOME);
            all.add(new Inclusion(name + "inserted component", i, n, root, leaf, longer, false));
        }
        return all;
    }

    private static List<Consistency> consistencies() {
        List<Consistency> all = new ArrayList<>(withoutProof());
        all.add(new Consistency("1 in 1", 1, 1, ROOTS.get(1), ROOTS.get(1), List.of(), true));
        all.addAll(damagedGrowth(
                1,
                8,
                "96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7",
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4"));
        all.addAll(damagedGrowth(
                6,
                8,
                "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
                "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"));
        all.addAll(damagedGrowth(
                2,
                5,
                "5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e",
                "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b"));
        all.addAll(damagedGrowth(
                6,
                7,
                "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
                "b08693ec2e721597130641e8211e7eedccb4c26413963eee6c1e2ed16ffb1a5f",
                "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7"));
        return all;
    }

    private static List<Consistency> withoutProof() {
        byte[] one = ascii("don't care 1");
        byte[] two = ascii("don't care 2");
        List<byte[]> none = List.of();
        List<byte[]> some = List.of(EMPTY);
        return List.of(
                new Consistency("0 in 0, roots differ", 0, 0, one, two, none, false),
                new Consistency("1 in 1, roots differ", 1, 1, one, two, none, false),
                new Consistency("0 in 0", 0, 0, one, one, none, true),
                new Consistency("0 in 1", 0, 1, one, two, none, true),
                new Consistency("1 in 1, same root", 1, 1, two, two, none, true),
                new Consistency("1 in 0", 1, 0, one, two, none, false),
                new Consistency("2 in 1", 2, 1, one, two, none, false),
                new Consistency("1 in 2, no path", 1, 2, one, two, none, false),
                new Consistency("0 in 0, other root", 0, 0, EMPTY, two, none, false),
                new Consistency("1 in 1, other root", 1, 1, EMPTY, two, none, false),
                new Consistency("0 in 0 with a path", 0, 0, EMPTY, EMPTY, some, false),
                new Consistency("0 in 1 with a path", 0, 1, EMPTY, EMPTY, some, false),
                new Consistency("1 in 1 with a path", 1, 1, EMPTY, EMPTY, some, false));
    }

    private static List<Consistency> damagedGrowth(int m, int n, String... proof) {
        List<byte[]> path = hex(proof);
        byte[] was = ROOTS.get(m);
        byte[] is = ROOTS.get(n);
        String name = m + " in " + n + ", ";
        List<byte[]> none = List.of();
        List<byte[]> shorter = path.subList(0, path.size() - 1);
        List<Consistency> all = new ArrayList<>(List.of(
                new Consistency(name + "happy path", m, n, was, is, path, true),
                new Consistency(name + "older - 1", m - 1, n, was, is, path, false),
                new Consistency(name + "older + 1", m + 1, n, was, is, path, false),
                new Consistency(name + "older ^ 2", m ^ 2, n, was, is, path, false),
                new Consistency(name + "newer * 2", m, n * 2L, was, is, path, false),
                new Consistency(name + "newer / 2", m, n / 2, was, is, path, false),
                new Consistency(name + "wrong older root", m, n, WRONG_ROOT, is, path, false),
                new Consistency(name + "wrong newer root", m, n, was, WRONG_ROOT, path, false),
                new Consistency(name + "swapped roots", m, n, is, was, path, false),
                new Consistency(name + "empty proof", m, n, was, is, none, false),
                new Consistency(name + "truncated proof", m, n, was, is, shorter, false)));
        Stream.of(
                        around(path, was),
                        around(path, is).subList(1, 2),
                        around(path, is).subList(3, 4))
                .flatMap(List::stream)
                .forEach(wrong -> all.add(new Consistency(name + "garbage", m, n, was, is, wrong, false)));
        List<byte[]> doubled = new ArrayList<>(path);
        doubled.add(0, path.get(0));
        all.add(new Consistency(name + "preceding proof[0]", m, n, was, is, doubled, false));
        flipped(path, 16).forEach(wrong -> all.add(new Consistency(name + "flipped", m, n, was, is, wrong, false)));
        return all;
    }

    /** Behind: nothing as a hash, the root; in front: the same. */
    private static List<List<byte[]>> around(List<byte[]> path, byte[] root) {
        List<List<byte[]>> all = new ArrayList<>();
        for (int at : new int[] {path.size(), 0}) {
            for (byte[] garbage : List.of(NONE, root)) {
                List<byte[]> wrong = new ArrayList<>(path);
                wrong.add(at, garbage);
                all.add(wrong);
            }
        }
        return all;
    }

    private static List<List<byte[]>> flipped(List<byte[]> path, int bit) {
        List<List<byte[]>> all = new ArrayList<>();
        for (int at = 0; at < path.size(); at++) {
            List<byte[]> wrong = new ArrayList<>(path);
            byte[] changed = path.get(at).clone();
            changed[0] ^= (byte) bit;
            wrong.set(at, changed);
            all.add(wrong);
        }
        return all;
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    @TestFactory
    Stream<DynamicTest> inclusionProofs() {
        return inclusions().stream().map(Inclusion::test);
    }

    @TestFactory
    Stream<DynamicTest> consistencyProofs() {
        return consistencies().stream().map(Consistency::test);
    }

    @Test
    void noCaseIsLost() {
        assertThat(inclusions()).hasSize(98);
        assertThat(consistencies()).hasSizeGreaterThanOrEqualTo(97);
    }
}
