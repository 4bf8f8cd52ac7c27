package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.flywaydb.core.api.MigrationVersion;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.backup.file.Manifest;

/** Backups written by earlier releases, one file a release, restored into today's tables. */
class OldBackupTests {

    private static final Path FIXTURES = Path.of("src/test/resources/backups");

    private static List<String> today;

    @TempDir
    Path directory;

    @BeforeAll
    static void describeTodaysTables() throws Exception {
        today = Catalogue.of(SampleInstallation.onServer().tables(MigrationVersion.LATEST));
    }

    static List<Path> backups() throws IOException {
        try (Stream<Path> files = Files.list(FIXTURES)) {
            return files.filter(file -> file.toString().endsWith(".backup")).toList();
        }
    }

    @Test
    void theFirstReleasesBackupIsAmongThem() throws Exception {
        assertThat(backups()).contains(FIXTURES.resolve("V006.backup"));
        assertThat(RestoreTests.manifest(FIXTURES.resolve("V006.backup")).schema())
                .isEqualTo("006");
    }

    @ParameterizedTest
    @MethodSource("backups")
    void anOldBackupIsRestoredAndBroughtUpToDate(Path old) throws Exception {
        SampleInstallation target = SampleInstallation.onServer();
        SampleInstallation.Run run = target.restore(old);
        assertThat(run.exit()).as(run.err()).isZero();
        assertThat(Catalogue.of(target)).isEqualTo(today);
        for (Manifest.Table table : RestoreTests.manifest(old).tables()) {
            assertThat(target.column("select count(*) from " + table.name()))
                    .as(table.name())
                    .containsExactly(Long.toString(table.parts().stream()
                            .mapToLong(Manifest.Part::rows)
                            .sum()));
        }
        assertThat(target.column("select printed_name from person order by tenant_id, id"))
                .containsExactly(
                        "Dr Ottilie Brannock",
                        "Fenna Hällinør-Łuk 金 👁",
                        "Ottilie Brannock",
                        "tab\there, line\nthere, back\\slash, \\N and \\.");
        assertThat(target.backup(directory.resolve("again.backup")).exit()).isZero();
    }
}
