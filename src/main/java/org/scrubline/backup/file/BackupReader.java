package org.scrubline.backup.file;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;

/** Reads a backup file from front to end, as often as asked. Believes nothing that has not been verified. */
public final class BackupReader {

    private static final int BUFFER = 1 << 16;
    private static final int LARGEST_MANIFEST = 1 << 28;

    private final Path file;
    private final Optional<Passphrase> passphrase;

    /** Takes the rows of one entry. */
    public interface RowSink {
        void accept(String entry, InputStream rows) throws IOException, SQLException;
    }

    @SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
    private record Contents(byte[] manifest, Map<String, Measure.Result> entries) {}

    /**
     * @param file a backup
     * @param passphrase what it was sealed with, if it was
     */
    public BackupReader(Path file, Optional<Passphrase> passphrase) {
        this.file = file;
        this.passphrase = passphrase;
    }

    /**
     * Reads the whole file and compares every byte with what was written.
     *
     * @return its manifest
     * @throws BackupProblem damaged, cut off, not a backup, of a newer format, or not opened by the passphrase
     */
    public Manifest verify() throws IOException {
        try {
            return read((entry, rows) -> rows.transferTo(OutputStream.nullOutputStream()));
        } catch (SQLException e) {
            throw new IllegalStateException("no database is read here", e);
        }
    }

    /** Hands over the rows of every entry, in order, comparing as it goes; a difference ends it with an exception. */
    public void rows(RowSink sink) throws IOException, SQLException {
        read(sink);
    }

    private Manifest read(RowSink sink) throws IOException, SQLException {
        try (InputStream disk = new BufferedInputStream(open(), BUFFER)) {
            DigestedInput digested = new DigestedInput(unsealed(disk));
            Contents contents = entries(new ZipInputStream(digested), sink);
            if (!digested.closesRight()) {
                throw BackupProblem.damaged("its closing digest does not fit its bytes.");
            }
            Manifest manifest = ManifestJson.read(contents.manifest());
            compare(manifest, contents.entries());
            return manifest;
        } catch (ZipException | EOFException | IllegalArgumentException e) {
            throw BackupProblem.damaged("its entries cannot be read.");
        }
    }

    private InputStream open() throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new BackupProblem("There is no file " + file + ".");
        }
        return Files.newInputStream(file);
    }

    /** A sealed file begins with its own mark, a plain one with that of a zip. */
    private InputStream unsealed(InputStream disk) throws IOException {
        disk.mark(Seal.MAGIC.length);
        byte[] start = disk.readNBytes(Seal.MAGIC.length);
        disk.reset();
        if (Arrays.equals(start, Seal.MAGIC)) {
            return new SealedInput(
                    disk,
                    passphrase.orElseThrow(() -> new BackupProblem(
                            "The backup is sealed. Give its passphrase with --passphrase-file FILE.")));
        }
        if (start.length < 4 || start[0] != 'P' || start[1] != 'K' || start[2] != 3 || start[3] != 4) {
            throw new BackupProblem("The file " + file + " is not a Scrubline backup, or its beginning is damaged.");
        }
        if (passphrase.isPresent()) {
            throw new BackupProblem("The backup is not sealed, so no passphrase vouches for it. Leave out"
                    + " --passphrase-file if you trust the file.");
        }
        return disk;
    }

    private static Contents entries(ZipInputStream zip, RowSink sink) throws IOException, SQLException {
        Map<String, Measure.Result> entries = new LinkedHashMap<>();
        for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
            if (entry.getName().equals(BackupWriter.MANIFEST)) {
                return new Contents(zip.readNBytes(LARGEST_MANIFEST), entries);
            }
            MeasuredInput measured = new MeasuredInput(zip);
            sink.accept(entry.getName(), measured);
            measured.transferTo(OutputStream.nullOutputStream());
            if (entries.put(entry.getName(), measured.measure().result()) != null) {
                throw BackupProblem.damaged("the entry " + entry.getName() + " is there twice.");
            }
        }
        throw BackupProblem.damaged("its list of contents is missing.");
    }

    private static void compare(Manifest manifest, Map<String, Measure.Result> found) {
        if (!manifest.parts().stream().map(Manifest.Part::entry).toList().equals(List.copyOf(found.keySet()))) {
            throw BackupProblem.damaged("its entries are not those its list of contents names.");
        }
        for (Manifest.Part part : manifest.parts()) {
            Measure.Result result = found.get(part.entry());
            if (result == null || !result.fits(part)) {
                throw BackupProblem.damaged("the entry " + part.entry() + " is not as it was written.");
            }
        }
    }
}
