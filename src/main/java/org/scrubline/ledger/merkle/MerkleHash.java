package org.scrubline.ledger.merkle;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * The hashes of RFC 9162 section 2.1.1 (the same as RFC 6962 section 2.1) with SHA-256: a leaf is hashed behind a byte
 * 0, a node behind a byte 1, so that neither can pass for the other.
 */
public final class MerkleHash {

    /** Length of a hash in bytes. */
    public static final int LENGTH = 32;

    private static final byte LEAF = 0;
    private static final byte NODE = 1;

    private MerkleHash() {}

    /** The root of a tree without leaves. */
    public static byte[] empty() {
        return sha256().digest();
    }

    public static byte[] leaf(byte[] data) {
        MessageDigest digest = sha256();
        digest.update(LEAF);
        return digest.digest(data);
    }

    /** The hash of a leaf whose data is this text in UTF-8. */
    public static byte[] leaf(String text) {
        return leaf(text.getBytes(StandardCharsets.UTF_8));
    }

    public static byte[] node(byte[] left, byte[] right) {
        MessageDigest digest = sha256();
        digest.update(NODE);
        digest.update(left);
        return digest.digest(right);
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
