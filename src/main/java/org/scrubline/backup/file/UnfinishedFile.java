package org.scrubline.backup.file;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Objects;
import java.util.Set;

/** A file under a name that says it is not whole; it gets its own name only when it is, and is on the disk. */
final class UnfinishedFile implements Closeable {

    /** End of the temporary name. */
    static final String SUFFIX = ".unfinished";

    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private final Path target;
    private final Path temporary;
    private final FileChannel channel;

    private UnfinishedFile(Path target, Path temporary, FileChannel channel) {
        this.target = target;
        this.temporary = temporary;
        this.channel = channel;
    }

    /** Creates the temporary file beside the target, readable by this user alone. An existing target is kept. */
    static UnfinishedFile of(Path wanted) {
        Path target = wanted.toAbsolutePath().normalize();
        if (Files.exists(target)) {
            throw new BackupProblem("There is already a file " + target + ". Choose another name.");
        }
        Path temporary = target.resolveSibling("." + target.getFileName() + SUFFIX);
        try {
            Files.deleteIfExists(temporary);
            FileChannel channel = FileChannel.open(
                    temporary, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), ownerOnly());
            temporary.toFile().deleteOnExit();
            return new UnfinishedFile(target, temporary, channel);
        } catch (IOException e) {
            throw new BackupProblem("The file " + target + " cannot be written: " + e.getMessage(), e);
        }
    }

    OutputStream stream() {
        return Channels.newOutputStream(channel);
    }

    /** Everything to the disk, then the name, then the directory that holds the name. */
    void finish() throws IOException {
        channel.force(true);
        channel.close();
        Files.move(temporary, target, StandardCopyOption.ATOMIC_MOVE);
        if (POSIX) {
            Path directory = Objects.requireNonNull(target.getParent());
            try (FileChannel names = FileChannel.open(directory, StandardOpenOption.READ)) {
                names.force(true);
            }
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
        Files.deleteIfExists(temporary);
    }

    private static FileAttribute<?>[] ownerOnly() {
        return POSIX
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }
}
