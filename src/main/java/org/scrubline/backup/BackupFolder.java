package org.scrubline.backup;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The directory of nightly backups. Touches no file whose name is not one of its own. */
final class BackupFolder {

    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmssX", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final Pattern OWN = Pattern.compile("scrubline-(\\d{8}T\\d{6}Z)\\.backup");

    private final Path directory;

    BackupFolder(Path directory) {
        this.directory = directory;
    }

    /**
     * One whole backup.
     *
     * @param created as its name says
     * @param bytes size of the file
     */
    record Entry(Path file, Instant created, long bytes) {}

    /** The name of a backup begun at the instant, in this directory, which is made if it is missing. */
    Path file(Instant created) throws IOException {
        Files.createDirectories(directory);
        return directory.resolve("scrubline-" + STAMP.format(created) + ".backup");
    }

    /** The newest backup; empty when there is none. */
    Optional<Entry> newest() throws IOException {
        return entries().stream().findFirst();
    }

    /** Removes the oldest backups beyond the number to keep. */
    void keep(int number) throws IOException {
        List<Entry> entries = entries();
        for (Entry old : entries.subList(Math.min(number, entries.size()), entries.size())) {
            Files.deleteIfExists(old.file());
        }
    }

    /** Newest first. */
    private List<Entry> entries() throws IOException {
        if (!Files.isDirectory(directory)) {
            return List.of();
        }
        List<Entry> entries = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(directory)) {
            for (Path file : files) {
                Matcher name = OWN.matcher(String.valueOf(file.getFileName()));
                if (name.matches()) {
                    entries.add(new Entry(file, STAMP.parse(name.group(1), Instant::from), Files.size(file)));
                }
            }
        }
        entries.sort(Comparator.comparing(Entry::created).reversed());
        return entries;
    }
}
