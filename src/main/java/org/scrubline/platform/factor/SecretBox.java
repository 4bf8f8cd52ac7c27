package org.scrubline.platform.factor;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Optional;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.PrivateFile;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Seals secrets that must be read again, with AES-256-GCM and a key that lies in a file, never in the database: whoever
 * gets hold of the tables or of a backup has no codes (decision 0021).
 */
@Component
class SecretBox {

    private static final String FILE = "secrets.key";
    private static final int KEY_BYTES = 32;
    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;

    private final SecureRandom random = new SecureRandom();
    private final SecretKeySpec key;

    SecretBox(
            @Value("${scrubline.secrets.key-file}") String keyFile,
            @Value("${scrubline.ledger.key-file}") String ledgerKey,
            @Value("${scrubline.data-directory}") Path dataDirectory)
            throws IOException {
        Path file = file(keyFile, ledgerKey, dataDirectory);
        this.key = new SecretKeySpec(bytes(file, PrivateFile.readOrCreate(file, this::fresh)), "AES");
    }

    /** Where it is named; else beside the key of the ledger, which an installation keeps safe anyway. */
    private static Path file(String keyFile, String ledgerKey, Path dataDirectory) {
        if (!keyFile.isEmpty()) {
            return Path.of(keyFile);
        }
        return ledgerKey.isEmpty()
                ? dataDirectory.resolve(FILE)
                : Path.of(ledgerKey).resolveSibling(FILE);
    }

    private String fresh() {
        byte[] bytes = new byte[KEY_BYTES];
        random.nextBytes(bytes);
        return Base64Url.text(bytes);
    }

    private static byte[] bytes(Path file, String text) throws IOException {
        try {
            byte[] bytes = Base64Url.bytes(text);
            if (bytes.length == KEY_BYTES) {
                return bytes;
            }
        } catch (IllegalArgumentException notBase64) {
            // Said below, like a wrong length.
        }
        throw new IOException(file + " holds no key of " + KEY_BYTES + " bytes in base64url");
    }

    /**
     * Seals a secret.
     *
     * @param purpose what it is and whose; it opens for the same purpose only
     */
    String seal(byte[] secret, String purpose) {
        byte[] nonce = new byte[NONCE_BYTES];
        random.nextBytes(nonce);
        try {
            byte[] sealed = cipher(Cipher.ENCRYPT_MODE, nonce, purpose).doFinal(secret);
            byte[] whole = Arrays.copyOf(nonce, NONCE_BYTES + sealed.length);
            System.arraycopy(sealed, 0, whole, NONCE_BYTES, sealed.length);
            return Base64Url.text(whole);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("AES-GCM is part of every JDK", e);
        }
    }

    /** The secret; empty when it was sealed with another key or for another purpose, or was touched. */
    Optional<byte[]> open(String sealed, String purpose) {
        try {
            byte[] whole = Base64Url.bytes(sealed);
            byte[] nonce = Arrays.copyOf(whole, NONCE_BYTES);
            return Optional.of(cipher(Cipher.DECRYPT_MODE, nonce, purpose)
                    .doFinal(whole, NONCE_BYTES, Math.max(0, whole.length - NONCE_BYTES)));
        } catch (GeneralSecurityException | IllegalArgumentException foreign) {
            return Optional.empty();
        }
    }

    private Cipher cipher(int mode, byte[] nonce, String purpose) throws GeneralSecurityException {
        Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
        cipher.init(mode, key, new GCMParameterSpec(TAG_BITS, nonce));
        cipher.updateAAD(purpose.getBytes(StandardCharsets.UTF_8));
        return cipher;
    }
}
