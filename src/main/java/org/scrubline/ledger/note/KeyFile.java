package org.scrubline.ledger.note;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Where the signing key is kept: base64 of its PKCS#8 form, readable by the operating-system user alone. */
public final class KeyFile {

    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private KeyFile() {}

    /** Reads the key; the first time, makes one. */
    public static SigningKey readOrCreate(Path file) throws IOException {
        if (!Files.exists(file)) {
            create(file);
        }
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

    /** Never writes over a file: of two servers that start at once, one makes the key and both read it. */
    private static void create(Path file) throws IOException {
        Path whole = file.toAbsolutePath();
        Path folder = whole.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        Path fresh = Files.createTempFile(folder, "ledger", ".key", attributes());
        try {
            Files.writeString(fresh, SigningKey.fresh().text() + "\n");
            Files.createLink(whole, fresh);
        } catch (FileAlreadyExistsException another) {
            // The other server's key holds.
        } finally {
            Files.delete(fresh);
        }
    }

    private static FileAttribute<?>[] attributes() {
        return POSIX
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }
}
