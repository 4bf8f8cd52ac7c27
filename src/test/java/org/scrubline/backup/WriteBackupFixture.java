package org.scrubline.backup;

import java.nio.file.Files;
import java.nio.file.Path;
import org.flywaydb.core.api.MigrationVersion;

/**
 * Writes a backup of today's tables with the invented rows, for {@link OldBackupTests} to restore for ever after. Run
 * once a release, see DEVELOPERS.md; the files are kept, never written again.
 */
final class WriteBackupFixture {

    private static final Path FIXTURES = Path.of("src/test/resources/backups");

    private WriteBackupFixture() {}

    /** @param args the version of the tables, as its newest migration is numbered */
    public static void main(String[] args) throws Exception {
        MigrationVersion version = MigrationVersion.fromVersion(args[0]);
        SampleInstallation installation = SampleInstallation.onServer().tables(version);
        installation.run(Files.readString(FIXTURES.resolve("invented.sql")));
        // Tables before V013 do not let the server's role read their version.
        installation.run("grant select on flyway_schema_history to scrubline_app");
        SampleInstallation.Run run = installation.backup(FIXTURES.resolve("V" + args[0] + ".backup"));
        System.out.print(run.out() + run.err());
        System.exit(run.exit());
    }
}
