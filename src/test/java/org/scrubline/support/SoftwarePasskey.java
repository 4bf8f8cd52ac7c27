package org.scrubline.support;

import com.webauthn4j.converter.util.ObjectConverter;
import com.webauthn4j.data.attestation.authenticator.EC2COSEKey;
import com.webauthn4j.data.attestation.statement.COSEAlgorithmIdentifier;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.interfaces.ECPublicKey;
import java.security.spec.ECGenParameterSpec;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.Passkeys;

/**
 * A passkey in software with a P-256 key, laid out byte by byte as Web Authentication Level 3 section 6.1 describes, for
 * tests that send what no browser would. The browser tests use Chromium's own authenticator.
 */
public final class SoftwarePasskey {

    /** Where the tests' server says it is. */
    public static final String ORIGIN = "http://localhost:8080";

    private static final byte PRESENT = 0x01;
    private static final byte VERIFIED = 0x04;
    private static final byte KEY_ATTACHED = 0x40;
    private static final ObjectConverter CONVERTER = new ObjectConverter();

    private final KeyPair keys;
    private final byte[] id = new byte[32];
    private final String origin;
    private byte verified = VERIFIED;
    private int counter = 1;

    /** A passkey of this account at the address the tests' server has by default. */
    public static SoftwarePasskey of(UUID account, Passkeys passkeys) {
        SoftwarePasskey passkey = new SoftwarePasskey(ORIGIN);
        byte[] challenge = sha256(passkey.id);
        passkeys.register(account, "ward tablet", passkey.register(Base64Url.text(challenge)), challenge)
                .orThrow();
        return passkey;
    }

    /** A passkey that answers as if asked by a page of this origin on localhost. */
    public SoftwarePasskey(String origin) {
        this.origin = origin;
        new SecureRandom().nextBytes(id);
        try {
            KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
            generator.initialize(new ECGenParameterSpec("secp256r1"));
            keys = generator.generateKeyPair();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Answers from now on without having checked who holds it. */
    public SoftwarePasskey withoutVerification() {
        verified = 0;
        return this;
    }

    /** Counts from here on, as a copy of an older state would. */
    public SoftwarePasskey countingFrom(int count) {
        counter = count;
        return this;
    }

    /** The RegistrationResponseJSON for this challenge, base64url. */
    public String register(String challenge) {
        byte[] object = CONVERTER
                .getCborMapper()
                .writeValueAsBytes(
                        Map.of("fmt", "none", "attStmt", Map.of(), "authData", join(data(KEY_ATTACHED), attached())));
        return """
                {"id":"%1$s","rawId":"%1$s","type":"public-key","clientExtensionResults":{},
                 "response":{"clientDataJSON":"%2$s","attestationObject":"%3$s"}}
                """.formatted(
                Base64Url.text(id), Base64Url.text(client("webauthn.create", challenge)), Base64Url.text(object));
    }

    /** The AuthenticationResponseJSON for this challenge, base64url. */
    public String answer(String challenge) {
        return answer(challenge, "");
    }

    /** The same, naming an account as its owner. */
    public String answer(String challenge, UUID account) {
        byte[] handle = ByteBuffer.allocate(16)
                .putLong(account.getMostSignificantBits())
                .putLong(account.getLeastSignificantBits())
                .array();
        return answer(challenge, ",\"userHandle\":\"" + Base64Url.text(handle) + "\"");
    }

    private String answer(String challenge, String handle) {
        byte[] data = data((byte) 0);
        byte[] client = client("webauthn.get", challenge);
        return """
                {"id":"%1$s","rawId":"%1$s","type":"public-key","clientExtensionResults":{},
                 "response":{"clientDataJSON":"%2$s","authenticatorData":"%3$s","signature":"%4$s"%5$s}}
                """.formatted(
                        Base64Url.text(id),
                        Base64Url.text(client),
                        Base64Url.text(data),
                        Base64Url.text(sign(join(data, sha256(client)))),
                        handle);
    }

    private byte[] data(byte more) {
        return ByteBuffer.allocate(37)
                .put(sha256("localhost".getBytes(StandardCharsets.UTF_8)))
                .put((byte) (PRESENT | verified | more))
                .putInt(counter++)
                .array();
    }

    private byte[] attached() {
        byte[] key = CONVERTER
                .getCborMapper()
                .writeValueAsBytes(EC2COSEKey.create((ECPublicKey) keys.getPublic(), COSEAlgorithmIdentifier.ES256));
        return join(ByteBuffer.allocate(18).putShort(16, (short) id.length).array(), id, key);
    }

    private byte[] client(String type, String challenge) {
        return """
                {"type":"%s","challenge":"%s","origin":"%s","crossOrigin":false}""".formatted(type, challenge, origin).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] sign(byte[] bytes) {
        try {
            Signature signature = Signature.getInstance("SHA256withECDSA");
            signature.initSign(keys.getPrivate());
            signature.update(bytes);
            return signature.sign();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static byte[] join(byte[]... parts) {
        ByteArrayOutputStream joined = new ByteArrayOutputStream();
        for (byte[] part : parts) {
            joined.writeBytes(part);
        }
        return joined.toByteArray();
    }
}
