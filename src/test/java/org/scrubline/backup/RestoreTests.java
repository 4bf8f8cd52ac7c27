package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.flywaydb.core.api.MigrationVersion;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.backup.SampleInstallation.Run;
import org.scrubline.backup.file.BackupReader;
import org.scrubline.backup.file.BackupWriter;
import org.scrubline.backup.file.Manifest;
import org.scrubline.platform.database.CommandDatabase;

/** The commands on databases of their own on a PostgreSQL server; one of them holds the invented rows. */
class RestoreTests {

    private static final String LATER_ROWS = """
            insert into ledger_checkpoint (tenant_id, id, size, root, issued_at, note) values
                ('00000000-0000-4000-8000-000000000001', gen_random_uuid(), 9, '', now(), 'older checkpoint'),
                ('00000000-0000-4000-8000-000000000001', gen_random_uuid(), 10, '', now(), E'newest\\ncheckpoint'),
                ('00000000-0000-4000-8000-000000000002', gen_random_uuid(), 1, '', now(), 'only checkpoint');
            insert into numbered_note (tenant_id, note) values
                ('00000000-0000-4000-8000-000000000001', 'first'),
                ('00000000-0000-4000-8000-000000000002', 'second');
            """;

    @TempDir
    static Path root;

    private static SampleInstallation source;
    private static Path whole;

    @TempDir
    Path directory;

    @BeforeAll
    static void fillAnInstallationAndBackItUp() throws Exception {
        source = later().filled();
        source.run(LATER_ROWS);
        whole = root.resolve("whole.backup");
        Run run = source.backup(whole);
        assertThat(run.exit()).as(run.err()).isZero();
        assertThat(run.out()).contains("Backed up").contains("version 900");
    }

    @Test
    void everyRowComesBackAsItWasAndTheCatalogueIsTheSame() throws Exception {
        SampleInstallation target = later();
        Run run = target.restore(whole);
        assertThat(run.exit()).as(run.err()).isZero();
        assertThat(run.out()).contains("Restored").contains("Everyone logs in again.");

        Path again = directory.resolve("again.backup");
        assertThat(target.backup(again).exit()).isZero();
        assertThat(manifest(again).tables()).isEqualTo(manifest(whole).tables());
        assertThat(manifest(again).checkpoints()).isEqualTo(manifest(whole).checkpoints());
        List<String> before = Catalogue.of(source);
        assertThat(before).hasSizeGreaterThan(300).anyMatch(line -> line.contains("FOREIGN KEY"));
        assertThat(Catalogue.of(target)).isEqualTo(before);
        assertThat(target.column("""
                insert into numbered_note (tenant_id, note)
                values ('00000000-0000-4000-8000-000000000001', 'third')
                returning number
                """)).containsExactly("3");
    }

    @Test
    void everyTableTravelsOrIsLeftOutWithAReason() throws Exception {
        Manifest manifest = manifest(whole);
        Set<String> named = new TreeSet<>(manifest.leftOut().keySet());
        named.addAll(manifest.tables().stream().map(Manifest.Table::name).collect(Collectors.toSet()));
        assertThat(source.column("select tablename from pg_tables where schemaname = 'public'"))
                .containsExactlyInAnyOrderElementsOf(named);
        assertThat(manifest.leftOut())
                .containsOnlyKeys(
                        "flyway_schema_history",
                        "spring_session",
                        "spring_session_attributes",
                        "login_throttle",
                        "login_link",
                        "allowance",
                        "setup_token")
                .allSatisfy((table, reason) -> assertThat(reason).isNotBlank());
        for (Manifest.Table table : manifest.tables()) {
            assertThat(source.column("select count(*) from " + table.name()))
                    .as(table.name())
                    .containsExactly(Long.toString(table.parts().stream()
                            .mapToLong(Manifest.Part::rows)
                            .sum()));
        }
    }

    @Test
    void theNewestCheckpointOfEachOrganisationStandsInTheManifest() throws Exception {
        assertThat(manifest(whole).checkpoints())
                .extracting(Manifest.Checkpoint::text)
                .containsExactly("newest\ncheckpoint", "only checkpoint");
    }

    @Test
    void tablesOfALaterReleaseAreRefusedAndNothingIsStored() throws Exception {
        SampleInstallation target = SampleInstallation.onServer();
        Run run = target.restore(whole);
        assertRefused(run, "written by a newer Scrubline");
        assertThat(run.err()).contains("version 900");
        assertThat(target.column("select tablename from pg_tables where schemaname = 'public'"))
                .isEmpty();
        assertThat(target.with(SampleInstallation.WITH_LATER_TABLES)
                        .restore(whole)
                        .exit())
                .isZero();
    }

    @Test
    void anInstallationThatHoldsDataIsNotTouched() throws Exception {
        assertRefused(source.restore(whole), "holds data");
        SampleInstallation target = later().tables(MigrationVersion.LATEST);
        target.run("insert into organisation values (gen_random_uuid(), 'Alone', now())");
        assertRefused(target.restore(whole), "holds data");
        target.run("delete from organisation;"
                + " insert into login_account values (gen_random_uuid(), 'x', null, true, now())");
        assertRefused(target.restore(whole), "holds data");
        target.run("delete from login_account");
        assertThat(target.restore(whole).exit()).isZero();
    }

    @Test
    void aDatabaseOfSomebodyElseIsNotCleared() throws Exception {
        SampleInstallation target = later();
        target.run("create table letters (body text)");
        assertRefused(target.restore(whole), "tables that are not Scrubline's");
        target.run("drop table letters");
        assertThat(target.restore(whole).exit()).isZero();
    }

    @Test
    void aDatabaseInUseIsNotWrittenUnder() throws Exception {
        SampleInstallation target = later();
        try (CommandDatabase database = CommandDatabase.beside(target.settings())) {
            Connection server = database.runtime().open();
            assertRefused(target.restore(whole), "A running Scrubline uses this database");
            server.close();
        }
        await().untilAsserted(() -> assertThat(target.restore(whole).exit()).isZero());
    }

    @Test
    void aLoadThatDoesNotSucceedLeavesTheInstallationEmpty() throws Exception {
        SampleInstallation target = later();
        assertRefused(target.restore(withPersonOfNoOrganisation()), "nothing was stored");
        assertThat(target.column("select count(*) from login_account")).containsExactly("0");
        assertThat(target.restore(whole).exit()).isZero();
        assertThat(target.column("select count(*) from login_account")).containsExactly("3");
    }

    @Test
    void aDamagedFileIsRefusedBeforeAnythingIsWritten() throws Exception {
        byte[] bytes = Files.readAllBytes(whole);
        bytes[bytes.length / 2] ^= 1;
        Path damaged = Files.write(directory.resolve("damaged.backup"), bytes);
        SampleInstallation target = later();
        assertRefused(target.restore(damaged), "The backup is damaged or incomplete");
        assertThat(target.column("select tablename from pg_tables where schemaname = 'public'"))
                .isEmpty();
    }

    @Test
    void aSealedBackupNeedsItsPassphrase() throws Exception {
        Path right = Files.writeString(directory.resolve("right"), "a quiet backup sentence\n");
        Path wrong = Files.writeString(directory.resolve("wrong"), "some other sentence\n");
        Path sealed = directory.resolve("sealed.backup");
        Run backup = source.backup(sealed, "--passphrase-file", right.toString());
        assertThat(backup.out()).as(backup.err()).contains(", sealed.");
        SampleInstallation target = later();
        assertRefused(target.restore(sealed), "The backup is sealed");
        assertRefused(target.restore(sealed, "--passphrase-file", wrong.toString()), "passphrase does not open");
        Run run = target.restore(sealed, "--passphrase-file", right.toString());
        assertThat(run.exit()).as(run.err()).isZero();
    }

    @Test
    void theLedgersKeyIsSpokenOfWhereItIsMissing() throws Exception {
        String setting = "--scrubline.ledger.key-file=" + directory.resolve("ledger.key");
        assertThat(later().restore(whole, setting).out())
                .contains("The key that signs the ledger's checkpoints is not part of a backup")
                .contains(directory.resolve("ledger.key").toString());
        Files.writeString(directory.resolve("ledger.key"), "invented");
        assertThat(later().restore(whole, setting).out()).contains("Restored").doesNotContain("ledger");
    }

    @Test
    void aTableTheServerMayNotReadStopsTheBackup() throws Exception {
        SampleInstallation target = later().filled();
        target.run("revoke select on site, person from scrubline_app");
        Path file = directory.resolve("unreadable.backup");
        assertRefused(target.backup(file), "may not read person, site");
        assertThat(file).doesNotExist();
        target.run("grant select on site, person to scrubline_app");
        assertThat(target.backup(file).exit()).isZero();
    }

    @Test
    void tablesThatDoNotSayTheirVersionAreNotBackedUp() throws Exception {
        SampleInstallation target = SampleInstallation.onServer().tables(MigrationVersion.fromVersion("7"));
        assertRefused(target.backup(directory.resolve("seven.backup")), "does not say which version its tables have");
        assertThat(target.tables(MigrationVersion.fromVersion("13"))
                        .backup(directory.resolve("thirteen.backup"))
                        .exit())
                .isZero();
    }

    @Test
    void wrongOptionsAreWrongUse() {
        assertThat(source.backup(Path.of("x"), "--shiny").exit()).isEqualTo(2);
        assertThat(source.restore(Path.of("x"), "--passphrase-file").exit()).isEqualTo(2);
    }

    private static SampleInstallation later() throws SQLException, IOException {
        return SampleInstallation.onServer(SampleInstallation.WITH_LATER_TABLES);
    }

    static void assertRefused(Run run, String sentence) {
        assertThat(run.exit()).as(run.out() + run.err()).isEqualTo(1);
        assertThat(run.err()).contains(sentence);
        assertThat(run.out()).isEmpty();
    }

    static Manifest manifest(Path file) throws IOException {
        return new BackupReader(file, Optional.empty()).verify();
    }

    /** A file that is whole in itself but whose rows break a foreign key. */
    private Path withPersonOfNoOrganisation() throws IOException, SQLException {
        Path file = directory.resolve("wrong.backup");
        Manifest manifest = manifest(whole);
        try (BackupWriter writer = BackupWriter.create(file, Optional.empty())) {
            Map<String, Manifest.Part> written = new HashMap<>();
            new BackupReader(whole, Optional.empty()).rows((entry, rows) -> {
                String lines = new String(rows.readAllBytes(), StandardCharsets.UTF_8);
                String changed =
                        entry.startsWith("tables/person/") ? lines.replace("0000000000a2", "00000000dead") : lines;
                Manifest.Part part = manifest.parts().stream()
                        .filter(one -> one.entry().equals(entry))
                        .findFirst()
                        .orElseThrow();
                written.put(
                        entry,
                        writer.add(entry, part.tenant(), out -> out.write(changed.getBytes(StandardCharsets.UTF_8))));
            });
            writer.finish(new Manifest(
                    manifest.format(),
                    manifest.scrubline(),
                    manifest.schema(),
                    manifest.postgresql(),
                    manifest.created(),
                    manifest.tables().stream()
                            .map(table -> new Manifest.Table(
                                    table.name(),
                                    table.columns(),
                                    table.parts().stream()
                                            .map(part -> Objects.requireNonNull(written.get(part.entry())))
                                            .toList()))
                            .toList(),
                    manifest.leftOut(),
                    manifest.checkpoints()));
        }
        return file;
    }
}
