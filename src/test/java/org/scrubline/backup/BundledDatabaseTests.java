package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.backup.RestoreTests.assertRefused;
import static org.scrubline.backup.RestoreTests.manifest;

import java.nio.file.Files;
import java.nio.file.Path;
import org.flywaydb.core.api.MigrationVersion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.backup.SampleInstallation.Run;
import org.scrubline.platform.database.CommandDatabase;

/** The commands on a data directory with the bundled database. */
class BundledDatabaseTests {

    @TempDir
    Path directory;

    @Test
    void aRunningServerMayBeBackedUpButIsNotWrittenUnder() throws Exception {
        SampleInstallation installation = SampleInstallation.bundled(directory.resolve("data of ours"));
        Path backup = directory.resolve("beside.backup");
        try (CommandDatabase server = CommandDatabase.alone(installation.settings())) {
            new Migrations(server.owner(), installation.settings()).begin(MigrationVersion.LATEST);
            installation.run(Files.readString(Path.of("src/test/resources/backups/invented.sql")));
            Run run = installation.backup(backup);
            assertThat(run.exit()).as(run.err()).isZero();
            assertRefused(installation.restore(backup), "A running Scrubline uses");
            assertThat(installation.column("select count(*) from login_account"))
                    .containsExactly("3");
            installation.run("delete from login_throttle; delete from login_invitation");
            installation.run("truncate organisation, login_account cascade");
        }
        Run run = installation.restore(backup);
        assertThat(run.exit()).as(run.err()).isZero();
        Path again = directory.resolve("again.backup");
        Run stopped = installation.backup(again);
        assertThat(stopped.exit()).as(stopped.err()).isZero();
        assertThat(manifest(again).tables()).isEqualTo(manifest(backup).tables());
        assertThat(directory.resolve("data of ours/pg/postmaster.pid"))
                .as("started for the command, stopped with it")
                .doesNotExist();
    }

    @Test
    void withoutAnInstallationThereIsNothingToBackUp() {
        SampleInstallation nowhere = SampleInstallation.bundled(directory.resolve("nowhere"));
        assertRefused(nowhere.backup(directory.resolve("nothing.backup")), "There is no installation in");
        assertThat(directory.resolve("nowhere")).doesNotExist();
    }

    @Test
    void noInstallationIsMadeForAFileThatIsNoBackup() throws Exception {
        Path letter = Files.writeString(directory.resolve("letter"), "Dear colleague, this is no backup at all.");
        SampleInstallation nowhere = SampleInstallation.bundled(directory.resolve("nowhere"));
        assertRefused(nowhere.restore(letter), "is not a Scrubline backup");
        assertThat(directory.resolve("nowhere")).doesNotExist();
    }
}
