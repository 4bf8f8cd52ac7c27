package org.scrubline.backup.file;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import javax.crypto.AEADBadTagException;
import javax.crypto.Cipher;
import javax.crypto.SecretKey;
import javax.crypto.spec.GCMParameterSpec;

/**
 * The head of a sealed file and the cipher of its chunks: AES-256-GCM, where each chunk's nonce is a random prefix, its
 * number and whether it is the last one, and each chunk authenticates the head. This is the STREAM construction of
 * Hoang, Reyhanitabar, Rogaway and Vizár, "Online Authenticated-Encryption and its Nonce-Reuse Misuse-Resistance"
 * (CRYPTO 2015, doi:10.1007/978-3-662-47989-6_24): a chunk left out, moved, repeated or cut off does not open.
 */
final class Seal {

    /** The first bytes of every sealed file. */
    static final byte[] MAGIC = "SCRBSEAL".getBytes(StandardCharsets.US_ASCII);

    /** Bytes of content a chunk holds; the last one may hold fewer. */
    static final int CHUNK = 1 << 16;

    /** Bytes a chunk grows by. */
    static final int TAG = 16;

    /** Bytes of the head. */
    static final int HEAD = 8 + 1 + 4 + 32 + 7 + 4 + 32 + 32;

    /** Rounds of the key derivation in files written here. */
    static final int ROUNDS = 600_000;

    private static final int MOST_ROUNDS = 20_000_000;
    private static final byte VERSION = 1;
    private static final int DIGEST = 32;

    private final byte[] head;
    private final byte[] prefix;
    private final SecretKey key;
    private final Cipher cipher;

    private Seal(byte[] head, byte[] prefix, SecretKey key) {
        this.head = head;
        this.prefix = prefix;
        this.key = key;
        try {
            this.cipher = Cipher.getInstance("AES/GCM/NoPadding");
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("AES-GCM is part of every JDK", e);
        }
    }

    /** A new seal with its own salt. */
    static Seal create(Passphrase passphrase) {
        SecureRandom random = new SecureRandom();
        byte[] salt = new byte[32];
        byte[] prefix = new byte[7];
        random.nextBytes(salt);
        random.nextBytes(prefix);
        Passphrase.Keys keys = passphrase.keys(salt, ROUNDS);
        byte[] described = ByteBuffer.allocate(HEAD - DIGEST)
                .put(MAGIC)
                .put(VERSION)
                .putInt(ROUNDS)
                .put(salt)
                .put(prefix)
                .putInt(CHUNK)
                .put(keys.check())
                .array();
        byte[] head = ByteBuffer.allocate(HEAD)
                .put(described)
                .put(Sha256.digest().digest(described))
                .array();
        return new Seal(head, prefix, keys.data());
    }

    /** Reads a head. Its own digest tells damage from a wrong passphrase. */
    static Seal read(InputStream in, Passphrase passphrase) throws IOException {
        byte[] head = in.readNBytes(HEAD);
        ByteBuffer fields = ByteBuffer.wrap(head);
        if (head.length < HEAD || !digestFits(head)) {
            throw BackupProblem.damaged("its first bytes are not as they were written.");
        }
        byte version = fields.get(MAGIC.length);
        if (version > VERSION) {
            throw new BackupProblem("The backup is sealed in a newer way (" + version
                    + ") than this program knows. Use the Scrubline that wrote it, or a newer one.");
        }
        fields.position(MAGIC.length + 1);
        int rounds = fields.getInt();
        byte[] salt = next(fields, 32);
        byte[] prefix = next(fields, 7);
        if (rounds < ROUNDS || rounds > MOST_ROUNDS || fields.getInt() != CHUNK) {
            throw BackupProblem.damaged("its first bytes name sizes no Scrubline writes.");
        }
        Passphrase.Keys keys = passphrase.keys(salt, rounds);
        if (!MessageDigest.isEqual(keys.check(), next(fields, 32))) {
            throw new BackupProblem("The passphrase does not open this backup. Nothing was restored.");
        }
        return new Seal(head, prefix, keys.data());
    }

    byte[] head() {
        return head.clone();
    }

    byte[] encrypt(long number, boolean last, byte[] content, int length) {
        try {
            start(Cipher.ENCRYPT_MODE, number, last);
            return cipher.doFinal(content, 0, length);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("a chunk could not be encrypted", e);
        }
    }

    byte[] decrypt(long number, boolean last, byte[] sealed, int length) {
        if (length < TAG) {
            throw BackupProblem.damaged("it ends within part " + (number + 1) + ".");
        }
        try {
            start(Cipher.DECRYPT_MODE, number, last);
            return cipher.doFinal(sealed, 0, length);
        } catch (AEADBadTagException e) {
            throw BackupProblem.damaged("part " + (number + 1) + " of the sealed file does not open.");
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("a chunk could not be decrypted", e);
        }
    }

    private void start(int mode, long number, boolean last) throws GeneralSecurityException {
        if (number >>> 32 != 0) {
            throw new BackupProblem("The backup is larger than a sealed file can be.");
        }
        byte[] nonce = ByteBuffer.allocate(12)
                .put(prefix)
                .putInt((int) number)
                .put((byte) (last ? 1 : 0))
                .array();
        cipher.init(mode, key, new GCMParameterSpec(8 * TAG, nonce));
        cipher.updateAAD(head);
    }

    private static boolean digestFits(byte[] head) {
        byte[] described = Arrays.copyOf(head, HEAD - DIGEST);
        return Arrays.equals(Sha256.digest().digest(described), Arrays.copyOfRange(head, HEAD - DIGEST, HEAD));
    }

    private static byte[] next(ByteBuffer fields, int length) {
        byte[] bytes = new byte[length];
        fields.get(bytes);
        return bytes;
    }
}
