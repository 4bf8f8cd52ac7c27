package org.scrubline.ledger.note;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.scrubline.platform.PrivateFile;

/** Where the signing key is kept: base64 of its PKCS#8 form, readable by the operating-system user alone. */
public final class KeyFile {

    private KeyFile() {}

    /** Reads the key; the first time, makes one. */
    public static SigningKey readOrCreate(Path file) throws IOException {
        PrivateFile.readOrCreate(file, () -> SigningKey.fresh().text());
        return read(file);
    }

    /**
     * Reads the key.
     *
     * @throws IOException when there is no such file, or it holds no key; the message names the file
     */
    public static SigningKey read(Path file) throws IOException {
        try {
            return SigningKey.parse(Files.readString(file));
        } catch (IllegalArgumentException e) {
            throw new IOException(file + " holds no signing key: " + e.getMessage(), e);
        }
    }
}
