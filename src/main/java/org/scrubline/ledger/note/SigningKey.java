package org.scrubline.ledger.note;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.bouncycastle.crypto.params.Ed25519PrivateKeyParameters;

/** An Ed25519 private key (RFC 8032). It signs under whatever name it is asked to. */
public final class SigningKey {

    private static final int LENGTH = 32;
    /** What PKCS#8 puts before the 32 bytes (RFC 8410 section 7). */
    private static final byte[] PKCS8 = HexFormat.of().parseHex("302e020100300506032b657004220420");

    private final byte[] seed;

    private SigningKey(byte[] seed) {
        this.seed = seed;
    }

    static SigningKey ofSeed(byte[] seed) {
        if (seed.length != LENGTH) {
            throw new IllegalArgumentException("an Ed25519 private key has 32 bytes");
        }
        return new SigningKey(seed.clone());
    }

    static SigningKey fresh() {
        byte[] seed = new byte[LENGTH];
        new SecureRandom().nextBytes(seed);
        return new SigningKey(seed);
    }

    /**
     * Reads the base64 of a PKCS#8 document.
     *
     * @throws IllegalArgumentException when it holds no Ed25519 key
     */
    static SigningKey parse(String base64) {
        byte[] document = Base64.getMimeDecoder().decode(base64);
        if (document.length != PKCS8.length + LENGTH
                || !Arrays.equals(document, 0, PKCS8.length, PKCS8, 0, PKCS8.length)) {
            throw new IllegalArgumentException("not the PKCS#8 form of an Ed25519 key");
        }
        return new SigningKey(Arrays.copyOfRange(document, PKCS8.length, document.length));
    }

    /** Base64 of the PKCS#8 document. */
    String text() {
        return Base64.getEncoder().encodeToString(VerifierKey.concat(PKCS8, seed));
    }

    public VerifierKey verifier(String name) {
        // The JDK has no way from a private key to its public one.
        return new VerifierKey(
                name,
                new Ed25519PrivateKeyParameters(seed, 0).generatePublicKey().getEncoded());
    }

    byte[] sign(byte[] message) {
        try {
            PrivateKey key = KeyFactory.getInstance("Ed25519").generatePrivate(new PKCS8EncodedKeySpec(document()));
            Signature signer = Signature.getInstance("Ed25519");
            signer.initSign(key);
            signer.update(message);
            return signer.sign();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Ed25519 is part of every JDK from 15 on", e);
        }
    }

    private byte[] document() {
        return VerifierKey.concat(PKCS8, seed);
    }

    /**
     * The checkpoint as a signed note, with one signature under this name.
     *
     * @param name of the key, see {@link #verifier}
     */
    public SignedCheckpoint sign(Checkpoint checkpoint, String name) {
        String text = checkpoint.text();
        byte[] signature = sign(text.getBytes(StandardCharsets.UTF_8));
        String line = SignedCheckpoint.DASH + " " + name + " "
                + Base64.getEncoder()
                        .encodeToString(VerifierKey.concat(verifier(name).id(), signature));
        return SignedCheckpoint.parse(text + "\n" + line + "\n");
    }
}
