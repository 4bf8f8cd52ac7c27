package org.scrubline.platform.database;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;

/**
 * The directory that holds everything an installation with the bundled database owns. The binaries lie beside the
 * data, never above it: the library clears old directories below its working directory.
 *
 * @param root absolute path
 */
record DataDirectory(Path root) {

    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    static DataDirectory prepare(Path path) throws IOException {
        Path root = path.toAbsolutePath().normalize();
        Files.createDirectories(root, attributes("rwx------"));
        return new DataDirectory(root);
    }

    Path database() {
        return root.resolve("pg");
    }

    Path binaries() {
        return root.resolve("pg-bin");
    }

    Path secret() {
        return root.resolve("pg.secret");
    }

    /** The superuser's password, made at the first start and readable by the operating-system user alone. */
    String readOrCreateSecret() throws IOException {
        if (!Files.exists(secret())) {
            byte[] bytes = new byte[24];
            new SecureRandom().nextBytes(bytes);
            Files.createFile(secret(), attributes("rw-------"));
            Files.writeString(secret(), HexFormat.of().formatHex(bytes));
        }
        return Files.readString(secret()).trim();
    }

    private static FileAttribute<?>[] attributes(String permissions) {
        return POSIX
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
                }
                : new FileAttribute<?>[0];
    }
}
