package org.scrubline.platform;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.function.Supplier;

/** Files that hold a key, readable by the operating-system user of the server alone. */
public final class PrivateFile {

    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private PrivateFile() {}

    /**
     * The line of a file; the first time, makes it. Never writes over one: of two servers that start at once, one makes
     * the file and both read it.
     */
    public static String readOrCreate(Path file, Supplier<String> fresh) throws IOException {
        if (!Files.exists(file)) {
            create(file.toAbsolutePath(), fresh.get());
        }
        return Files.readString(file).strip();
    }

    private static void create(Path file, String line) throws IOException {
        Path folder = file.getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        Path fresh = Files.createTempFile(folder, "fresh", ".key", attributes());
        try {
            Files.writeString(fresh, line + "\n");
            Files.createLink(file, fresh);
        } catch (FileAlreadyExistsException another) {
            // The other server's file holds.
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
