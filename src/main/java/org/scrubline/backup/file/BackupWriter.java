package org.scrubline.backup.file;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;

/** Writes a backup file entry by entry. Closed before {@link #finish}, it leaves no file. */
public final class BackupWriter implements Closeable {

    static final String MANIFEST = "manifest.json";

    private static final int BUFFER = 1 << 16;

    private final UnfinishedFile file;
    private final Optional<SealedOutput> sealed;
    private final DigestedOutput digested;
    private final ZipOutputStream zip;

    /** Writes rows, one a line. */
    public interface Rows {
        void copyTo(OutputStream out) throws IOException, SQLException;
    }

    private BackupWriter(UnfinishedFile file, Optional<Passphrase> passphrase) throws IOException {
        this.file = file;
        OutputStream disk = new BufferedOutputStream(file.stream(), BUFFER);
        this.sealed = passphrase.isPresent()
                ? Optional.of(new SealedOutput(disk, Seal.create(passphrase.get())))
                : Optional.empty();
        this.digested =
                new DigestedOutput(sealed.<OutputStream>map(seal -> seal).orElse(disk));
        this.zip = new ZipOutputStream(new BufferedOutputStream(digested, BUFFER));
        zip.setComment("0".repeat(HeldBackTail.LENGTH));
    }

    /**
     * Begins a file.
     *
     * @param target its name; must not exist
     * @param passphrase seals it, if given
     */
    public static BackupWriter create(Path target, Optional<Passphrase> passphrase) throws IOException {
        UnfinishedFile file = UnfinishedFile.of(target);
        try {
            return new BackupWriter(file, passphrase);
        } catch (IOException | RuntimeException e) {
            file.close();
            throw e;
        }
    }

    /**
     * Writes one entry.
     *
     * @param tenant the organisation whose rows they are, or null
     * @return what the manifest says about it
     */
    public Manifest.Part add(String entry, @Nullable UUID tenant, Rows rows) throws IOException, SQLException {
        zip.putNextEntry(new ZipEntry(entry));
        MeasuredOutput measured = new MeasuredOutput(zip);
        rows.copyTo(measured);
        zip.closeEntry();
        Measure.Result result = measured.measure().result();
        return new Manifest.Part(tenant, entry, result.rows(), result.bytes(), result.sha256());
    }

    /** Writes the manifest, closes every layer and gives the file its name. */
    public void finish(Manifest manifest) throws IOException {
        zip.putNextEntry(new ZipEntry(MANIFEST));
        zip.write(ManifestJson.write(manifest));
        zip.closeEntry();
        zip.finish();
        zip.flush();
        digested.finish();
        if (sealed.isPresent()) {
            sealed.get().finish();
        }
        file.finish();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
