package org.scrubline.backup.file;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.text.Normalizer;
import java.util.Arrays;
import javax.crypto.Mac;
import javax.crypto.SecretKey;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.SecretKeySpec;
import org.jspecify.annotations.Nullable;

/** The sentence a backup is sealed with. Keys are derived slowly, so the last derivation is remembered. */
public final class Passphrase {

    /** Fewest characters of a passphrase. */
    public static final int SHORTEST = 12;

    private final String sentence;
    private @Nullable Derived last;

    /**
     * The two keys of a file.
     *
     * @param data encrypts the chunks
     * @param check 32 bytes that tell a wrong passphrase from a damaged file
     */
    @SuppressWarnings("ArrayRecordComponent") // handed on, never compared as a whole
    record Keys(SecretKey data, byte[] check) {}

    @SuppressWarnings("ArrayRecordComponent") // the salt is compared by its content below
    private record Derived(byte[] salt, int rounds, Keys keys) {}

    /** @param sentence any text; brought to Unicode normal form C so that keyboards agree */
    public Passphrase(String sentence) {
        this.sentence = Normalizer.normalize(sentence, Normalizer.Form.NFC);
        if (sentence.codePointCount(0, sentence.length()) < SHORTEST) {
            throw new BackupProblem("A passphrase needs at least " + SHORTEST + " characters.");
        }
    }

    /** Reads the first line of a file. */
    public static Passphrase of(Path file) {
        try {
            return new Passphrase(
                    Files.readString(file).lines().findFirst().orElse("").strip());
        } catch (IOException unreadable) {
            throw new BackupProblem("The passphrase file " + file + " cannot be read.", unreadable);
        }
    }

    /**
     * PBKDF2 with HMAC-SHA-256 (RFC 8018), then one HMAC a purpose (the expand step of RFC 5869 with a single block).
     *
     * @param salt random, one a file
     * @param rounds iterations
     */
    Keys keys(byte[] salt, int rounds) {
        Derived known = last;
        if (known == null || known.rounds() != rounds || !Arrays.equals(known.salt(), salt)) {
            known = new Derived(salt.clone(), rounds, derive(salt, rounds));
            last = known;
        }
        return known.keys();
    }

    private Keys derive(byte[] salt, int rounds) {
        try {
            byte[] root = SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256")
                    .generateSecret(new PBEKeySpec(sentence.toCharArray(), salt, rounds, 256))
                    .getEncoded();
            return new Keys(
                    new SecretKeySpec(expand(root, "scrubline backup data"), "AES"),
                    expand(root, "scrubline backup check"));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("PBKDF2 and HMAC-SHA-256 are part of every JDK", e);
        }
    }

    private static byte[] expand(byte[] root, String purpose) throws GeneralSecurityException {
        Mac mac = Mac.getInstance("HmacSHA256");
        mac.init(new SecretKeySpec(root, "HmacSHA256"));
        mac.update(purpose.getBytes(StandardCharsets.US_ASCII));
        return mac.doFinal(new byte[] {1});
    }
}
