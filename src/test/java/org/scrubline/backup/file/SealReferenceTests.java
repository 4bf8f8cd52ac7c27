package org.scrubline.backup.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;
import org.bouncycastle.crypto.InvalidCipherTextException;
import org.bouncycastle.crypto.digests.SHA256Digest;
import org.bouncycastle.crypto.engines.AESEngine;
import org.bouncycastle.crypto.generators.HKDFBytesGenerator;
import org.bouncycastle.crypto.generators.PKCS5S2ParametersGenerator;
import org.bouncycastle.crypto.modes.GCMBlockCipher;
import org.bouncycastle.crypto.params.AEADParameters;
import org.bouncycastle.crypto.params.HKDFParameters;
import org.bouncycastle.crypto.params.KeyParameter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A sealed file opened by other people's code, from docs/backup-format.md alone: Bouncy Castle's PBKDF2, HKDF and GCM. */
class SealReferenceTests {

    private static final String SENTENCE = "a quiet backup sentence";

    /** RFC 7914, section 11, second vector (the RFC's text). */
    @Test
    void theKeyDerivationOfTheRuntimeIsThatOfTheStandard() throws Exception {
        byte[] derived = SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                .generateSecret(new PBEKeySpec(
                        "Password".toCharArray(), "NaCl".getBytes(StandardCharsets.US_ASCII), 80_000, 512))
                .getEncoded();
        assertThat(HexFormat.of().formatHex(derived))
                .isEqualTo("4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
                        + "a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, Seal.CHUNK - 1, Seal.CHUNK, Seal.CHUNK + 1, 3 * Seal.CHUNK})
    void anotherImplementationOpensWhatWasSealed(int size) throws Exception {
        byte[] content = new byte[size];
        new Random(size).nextBytes(content);
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        SealedOutput sealed = new SealedOutput(file, Seal.create(new Passphrase(SENTENCE)));
        sealed.write(content);
        sealed.finish();
        assertThat(open(file.toByteArray())).isEqualTo(content);
    }

    private static byte[] open(byte[] file) throws InvalidCipherTextException {
        ByteBuffer fields = ByteBuffer.wrap(file);
        assertThat(new String(take(fields, 8), StandardCharsets.US_ASCII)).isEqualTo("SCRBSEAL");
        assertThat(fields.get()).isEqualTo((byte) 1);
        int rounds = fields.getInt();
        assertThat(rounds).isGreaterThanOrEqualTo(600_000);
        byte[] salt = take(fields, 32);
        byte[] prefix = take(fields, 7);
        int chunk = fields.getInt();
        byte[] check = take(fields, 32);
        byte[] headDigest = take(fields, 32);
        byte[] head = Arrays.copyOf(file, fields.position());
        byte[] root = root(salt, rounds);
        assertThat(check).isEqualTo(expand(root, "scrubline backup check"));
        assertThat(headDigest).hasSize(32);
        byte[] key = expand(root, "scrubline backup data");
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        for (int number = 0; fields.hasRemaining(); number++) {
            byte[] sealed = take(fields, Math.min(fields.remaining(), chunk + 16));
            byte[] nonce = ByteBuffer.allocate(12)
                    .put(prefix)
                    .putInt(number)
                    .put((byte) (fields.hasRemaining() ? 0 : 1))
                    .array();
            content.writeBytes(decrypt(key, nonce, head, sealed));
        }
        return content.toByteArray();
    }

    private static byte[] root(byte[] salt, int rounds) {
        PKCS5S2ParametersGenerator generator = new PKCS5S2ParametersGenerator(new SHA256Digest());
        generator.init(SENTENCE.getBytes(StandardCharsets.UTF_8), salt, rounds);
        return ((KeyParameter) generator.generateDerivedParameters(256)).getKey();
    }

    private static byte[] expand(byte[] root, String purpose) {
        HKDFBytesGenerator generator = new HKDFBytesGenerator(new SHA256Digest());
        generator.init(HKDFParameters.skipExtractParameters(root, purpose.getBytes(StandardCharsets.US_ASCII)));
        byte[] key = new byte[32];
        generator.generateBytes(key, 0, key.length);
        return key;
    }

    private static byte[] decrypt(byte[] key, byte[] nonce, byte[] head, byte[] sealed)
            throws InvalidCipherTextException {
        var cipher = GCMBlockCipher.newInstance(AESEngine.newInstance());
        cipher.init(false, new AEADParameters(new KeyParameter(key), 128, nonce, head));
        byte[] open = new byte[cipher.getOutputSize(sealed.length)];
        int length = cipher.processBytes(sealed, 0, sealed.length, open, 0);
        length += cipher.doFinal(open, length);
        return Arrays.copyOf(open, length);
    }

    private static byte[] take(ByteBuffer fields, int length) {
        byte[] bytes = new byte[length];
        fields.get(bytes);
        return bytes;
    }
}
