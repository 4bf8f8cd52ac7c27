package org.scrubline.platform.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.OptionalInt;

/** Tells whether a running process serves a database directory, and at which port. */
final class RunningServer {

    /** The fourth line of PostgreSQL's own process file. */
    private static final int PORT_LINE = 3;

    private RunningServer() {}

    /** Whether a running Scrubline, this process included, holds the directory. */
    static boolean holds(Path data) throws IOException {
        Path lockFile = data.resolve("epg-lock");
        if (!Files.exists(lockFile)) {
            return false;
        }
        try (FileChannel channel = FileChannel.open(lockFile, StandardOpenOption.WRITE);
                FileLock lock = channel.tryLock()) {
            return lock == null;
        } catch (OverlappingFileLockException ownProcess) {
            return true;
        }
    }

    /** The port the server of a held directory answers at; empty while it is still starting. */
    static OptionalInt port(Path data) throws IOException {
        Path processFile = data.resolve("postmaster.pid");
        List<String> lines = Files.exists(processFile) ? Files.readAllLines(processFile) : List.of();
        return lines.size() > PORT_LINE && lines.get(PORT_LINE).trim().matches("\\d+")
                ? OptionalInt.of(Integer.parseInt(lines.get(PORT_LINE).trim()))
                : OptionalInt.empty();
    }
}
