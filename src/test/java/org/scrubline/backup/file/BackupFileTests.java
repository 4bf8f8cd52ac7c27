package org.scrubline.backup.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BackupFileTests {

    private static final Passphrase SENTENCE = new Passphrase("a quiet backup sentence");
    private static final UUID TENANT = UUID.fromString("00000000-0000-4000-8000-000000000001");
    private static final String PEOPLE = "1\tBrannock\n2\tHallinor\n";

    @TempDir
    Path directory;

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void whatWasWrittenIsRead(boolean sealed) throws Exception {
        Path file = write("whole", sealed);
        Manifest manifest = reader(file, sealed).verify();
        assertThat(manifest.schema()).isEqualTo("013");
        assertThat(manifest.created()).isEqualTo(Instant.parse("2026-11-27T02:30:00Z"));
        assertThat(manifest.rows()).isEqualTo(2 + 20_000);
        assertThat(manifest.parts().get(0).tenant()).isNull();
        assertThat(manifest.parts().get(1).tenant()).isEqualTo(TENANT);
        StringBuilder read = new StringBuilder();
        reader(file, sealed)
                .rows((entry, rows) -> read.append(entry)
                        .append('\n')
                        .append(new String(rows.readAllBytes(), StandardCharsets.UTF_8)));
        assertThat(read.toString()).isEqualTo("tables/person.copy\n" + PEOPLE + "tables/step.copy\n" + steps());
    }

    @Test
    void aPlainBackupIsAnOrdinaryZipWhoseLastCharactersAreTheDigestOfAllBefore() throws Exception {
        Path file = write("zip", false);
        byte[] bytes = Files.readAllBytes(file);
        byte[] before = Arrays.copyOf(bytes, bytes.length - 64);
        assertThat(new String(bytes, before.length, 64, StandardCharsets.US_ASCII))
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(before)));
        try (ZipFile zip = new ZipFile(file.toFile())) {
            assertThat(new String(
                            zip.getInputStream(zip.getEntry("tables/person.copy"))
                                    .readAllBytes(),
                            StandardCharsets.UTF_8))
                    .isEqualTo(PEOPLE);
            assertThat(zip.size()).isEqualTo(3);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void everyFlippedBitIsNoticed(boolean sealed) throws Exception {
        byte[] whole = Files.readAllBytes(write("flips", sealed));
        Random random = new Random(20261127);
        for (int i = 0; i < 200; i++) {
            byte[] flipped = whole.clone();
            int position = i < 20 ? i * 6 : random.nextInt(whole.length);
            flipped[position] ^= (byte) (1 << random.nextInt(8));
            assertNoticed(flipped, sealed, "bit flipped in byte " + position);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void everyCutIsNoticed(boolean sealed) throws Exception {
        byte[] whole = Files.readAllBytes(write("cuts", sealed));
        int sealedChunk = Seal.CHUNK + Seal.TAG;
        IntStream lengths = IntStream.concat(
                IntStream.of(0, 1, 63, 64, 65, whole.length - 1, whole.length - 64, whole.length - 65)
                        .filter(length -> length < whole.length),
                IntStream.concat(
                        IntStream.iterate(Seal.HEAD, length -> length < whole.length, length -> length + sealedChunk),
                        new Random(7).ints(60, 0, whole.length)));
        for (int length : lengths.toArray()) {
            assertNoticed(Arrays.copyOf(whole, length), sealed, "cut to " + length);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void anAddedByteIsNoticed(boolean sealed) throws Exception {
        byte[] whole = Files.readAllBytes(write("longer", sealed));
        assertNoticed(Arrays.copyOf(whole, whole.length + 1), sealed, "one byte more");
    }

    @Test
    void swappedAndRepeatedChunksAreNoticed() throws Exception {
        byte[] whole = Files.readAllBytes(write("swapped", true));
        int chunk = Seal.CHUNK + Seal.TAG;
        assertThat(whole.length).isGreaterThan(Seal.HEAD + 2 * chunk);
        byte[] swapped = whole.clone();
        System.arraycopy(whole, Seal.HEAD, swapped, Seal.HEAD + chunk, chunk);
        System.arraycopy(whole, Seal.HEAD + chunk, swapped, Seal.HEAD, chunk);
        assertNoticed(swapped, true, "chunks 1 and 2 swapped");
        byte[] repeated = whole.clone();
        System.arraycopy(whole, Seal.HEAD, repeated, Seal.HEAD + chunk, chunk);
        assertNoticed(repeated, true, "chunk 1 repeated");
    }

    @Test
    void aWrongPassphraseIsToldFromDamage() throws Exception {
        Path file = write("wrong", true);
        assertThatThrownBy(() -> new BackupReader(file, Optional.of(new Passphrase("another quiet sentence"))).verify())
                .isInstanceOf(BackupProblem.class)
                .hasMessageContaining("The passphrase does not open this backup");
        assertThat(new BackupReader(file, Optional.of(new Passphrase("a quiet backup sentence")))
                        .verify()
                        .rows())
                .isEqualTo(20_002);
    }

    @Test
    void aSealedFileAsksForItsPassphraseAndAPlainOneRefusesOne() throws Exception {
        assertThatThrownBy(() -> reader(write("asks", true), false).verify())
                .hasMessageContaining("The backup is sealed");
        assertThatThrownBy(() -> reader(write("refuses", false), true).verify())
                .hasMessageContaining("The backup is not sealed");
    }

    @Test
    void aSealedFileShowsNothingOfItsContent() throws Exception {
        String bytes = new String(Files.readAllBytes(write("opaque", true)), StandardCharsets.ISO_8859_1);
        assertThat(bytes).doesNotContain("tables/").doesNotContain("Brannock");
    }

    @Test
    void aFileOfAnotherKindIsNamedSo() throws Exception {
        Path other = Files.writeString(directory.resolve("letter.txt"), "Dear colleague, this is no backup.");
        assertThatThrownBy(() -> reader(other, false).verify()).hasMessageContaining("is not a Scrubline backup");
        assertThatThrownBy(() -> reader(directory.resolve("nowhere"), false).verify())
                .hasMessageContaining("There is no file");
    }

    @Test
    void aNewerFormatIsRefusedByItsNumber() throws Exception {
        Path file = directory.resolve("newer");
        try (BackupWriter writer = BackupWriter.create(file, Optional.empty())) {
            writer.finish(new Manifest(2, "9.9", "013", 18, Instant.EPOCH, List.of(), Map.of(), List.of()));
        }
        assertThatThrownBy(() -> reader(file, false).verify())
                .hasMessageContaining("file format 2")
                .hasMessageContaining("reads format 1");
    }

    @Test
    void anExistingFileIsKept() throws Exception {
        Path taken = Files.writeString(directory.resolve("taken"), "precious");
        assertThatThrownBy(() -> write("taken", false)).hasMessageContaining("There is already a file");
        assertThat(taken).hasContent("precious");
    }

    @Test
    void anAbortedBackupLeavesNoFile() throws Exception {
        try (BackupWriter writer = BackupWriter.create(directory.resolve("aborted"), Optional.empty())) {
            assertThatThrownBy(() -> writer.add("tables/person.copy", null, out -> {
                        out.write(PEOPLE.getBytes(StandardCharsets.UTF_8));
                        throw new IOException("disk full");
                    }))
                    .hasMessage("disk full");
            assertThat(names()).containsExactly(".aborted.unfinished");
        }
        assertThat(names()).isEmpty();
        write("aborted", false);
        assertThat(names()).containsExactly("aborted");
    }

    @Test
    void onlyTheOwnerMayReadABackup() throws Exception {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(write("private", false))))
                .isEqualTo("rw-------");
    }

    @Test
    void aShortPassphraseIsRefused() throws Exception {
        assertThatThrownBy(() -> new Passphrase("elevenchars")).hasMessageContaining("at least 12 characters");
        assertThat(new Passphrase("twelve chars")).isNotNull();
        Path file = Files.writeString(directory.resolve("passphrase"), "  twelve chars \nnot this line\n");
        assertThat(Passphrase.of(file).keys(new byte[32], 1).check())
                .isEqualTo(new Passphrase("twelve chars").keys(new byte[32], 1).check());
        assertThatThrownBy(() -> Passphrase.of(directory.resolve("nowhere"))).hasMessageContaining("cannot be read");
    }

    @Test
    void theTailIsHeldBackWhateverTheSizesOfTheWrites() throws Exception {
        Random random = new Random(3);
        byte[] bytes = new byte[5000];
        random.nextBytes(bytes);
        java.io.ByteArrayOutputStream passed = new java.io.ByteArrayOutputStream();
        HeldBackTail tail = new HeldBackTail(passed::write);
        for (int from = 0; from < bytes.length; ) {
            int length = Math.min(bytes.length - from, random.nextInt(150));
            tail.push(bytes, from, length);
            from += length;
        }
        assertThat(passed.toByteArray()).isEqualTo(Arrays.copyOf(bytes, bytes.length - 64));
        assertThat(tail.tail()).isEqualTo(Arrays.copyOfRange(bytes, bytes.length - 64, bytes.length));
    }

    private void assertNoticed(byte[] bytes, boolean sealed, String what) throws IOException {
        Path file = directory.resolve("changed");
        Files.write(file, bytes);
        assertThat(catchThrowable(() -> reader(file, sealed).verify())).as(what).isInstanceOf(BackupProblem.class);
    }

    private BackupReader reader(Path file, boolean sealed) {
        return new BackupReader(file, sealed ? Optional.of(SENTENCE) : Optional.empty());
    }

    private Path write(String name, boolean sealed) throws IOException, SQLException {
        Path file = directory.resolve(name);
        try (BackupWriter writer = BackupWriter.create(file, sealed ? Optional.of(SENTENCE) : Optional.empty())) {
            Manifest.Part people =
                    writer.add("tables/person.copy", null, out -> out.write(PEOPLE.getBytes(StandardCharsets.UTF_8)));
            Manifest.Part steps = writer.add("tables/step.copy", TENANT, out -> {
                try (InputStream lines = new ByteArrayInputStream(steps().getBytes(StandardCharsets.UTF_8))) {
                    lines.transferTo(out);
                }
            });
            writer.finish(new Manifest(
                    Manifest.FORMAT,
                    "0.1.0",
                    "013",
                    18,
                    Instant.parse("2026-11-27T02:30:00Z"),
                    List.of(
                            new Manifest.Table("person", List.of("id", "name"), List.of(people)),
                            new Manifest.Table("step", List.of("value"), List.of(steps))),
                    Map.of("spring_session", "everyone logs in again"),
                    List.of(new Manifest.Checkpoint(TENANT, "size 3\n"))));
        }
        return file;
    }

    /** Lines that do not shrink much, so that a sealed file has several chunks. */
    private static String steps() {
        Random random = new Random(1);
        StringBuilder lines = new StringBuilder();
        for (int i = 0; i < 20_000; i++) {
            lines.append(Long.toHexString(random.nextLong())).append('\n');
        }
        return lines.toString();
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(directory)) {
            return files.map(file -> file.getFileName().toString()).toList();
        }
    }
}
