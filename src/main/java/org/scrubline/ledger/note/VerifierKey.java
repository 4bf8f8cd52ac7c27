package org.scrubline.ledger.note;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The public half of a signing key under its name: with it anyone can check what the ledger signed. */
public final class VerifierKey {

    /** Length of an Ed25519 public key in bytes. */
    static final int LENGTH = 32;
    /** Type byte of Ed25519 in a signed note. */
    static final byte ED25519 = 1;

    private static final Pattern TEXT = Pattern.compile("([^\\s+]+)\\+([0-9a-f]{8})\\+([A-Za-z0-9+/]+=*)");
    /** What X.509 puts before the 32 bytes (RFC 8410 section 4). */
    private static final byte[] X509 = HexFormat.of().parseHex("302a300506032b6570032100");

    private final String name;
    private final byte[] raw;

    VerifierKey(String name, byte[] raw) {
        if (!name.matches("[^\\s+\\p{Cntrl}]+") || raw.length != LENGTH) {
            throw new IllegalArgumentException("a key needs a name without spaces and plus signs, and 32 bytes");
        }
        this.name = name;
        this.raw = raw.clone();
    }

    /**
     * Reads {@code name+id+base64}.
     *
     * @throws IllegalArgumentException when it is no Ed25519 verifier key, or the id is not that of the key
     */
    public static VerifierKey parse(String text) {
        Matcher parts = TEXT.matcher(text.strip());
        if (!parts.matches()) {
            throw new IllegalArgumentException("not a verifier key: " + text.strip());
        }
        byte[] typed = Base64.getDecoder().decode(parts.group(3));
        if (typed.length != LENGTH + 1 || typed[0] != ED25519) {
            throw new IllegalArgumentException("not an Ed25519 verifier key: " + text.strip());
        }
        VerifierKey key = new VerifierKey(parts.group(1), Arrays.copyOfRange(typed, 1, typed.length));
        if (!key.text().equals(text.strip())) {
            throw new IllegalArgumentException("the verifier key does not have the id it names: " + text.strip());
        }
        return key;
    }

    public String name() {
        return name;
    }

    /** {@code name+id+base64(type || key)}, the form offices keep. */
    public String text() {
        byte[] typed = new byte[LENGTH + 1];
        typed[0] = ED25519;
        System.arraycopy(raw, 0, typed, 1, LENGTH);
        return name + "+" + HexFormat.of().formatHex(id()) + "+"
                + Base64.getEncoder().encodeToString(typed);
    }

    /** First four bytes of SHA-256(name || 0x0A || type || key). */
    byte[] id() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update((name + "\n").getBytes(StandardCharsets.UTF_8));
            digest.update(ED25519);
            return Arrays.copyOf(digest.digest(raw), 4);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("SHA-256 is part of every JDK", e);
        }
    }

    boolean verifies(byte[] message, byte[] signature) {
        try {
            PublicKey key = KeyFactory.getInstance("Ed25519").generatePublic(new X509EncodedKeySpec(concat(X509, raw)));
            Signature verifier = Signature.getInstance("Ed25519");
            verifier.initVerify(key);
            verifier.update(message);
            return verifier.verify(signature);
        } catch (GeneralSecurityException noSignature) {
            return false;
        }
    }

    static byte[] concat(byte[] one, byte[] other) {
        byte[] both = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof VerifierKey key && key.name.equals(name) && Arrays.equals(key.raw, raw);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(raw);
    }

    @Override
    public String toString() {
        return text();
    }
}
