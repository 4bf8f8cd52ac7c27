package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.backup.file.BackupReader;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.test.annotation.DirtiesContext;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.util.FileSystemUtils;

/**
 * The day the disk dies: a server with the bundled database works, is backed up while it does, works on, and loses its
 * directory. What was there at the backup comes back byte for byte.
 */
@SpringBootTest(properties = {"spring.datasource.url=embedded", "scrubline.jobs.enabled=false"})
@Import({TestOrganisations.class, History.class})
@DirtiesContext
class DrillTests {

    private static final Instant START = Instant.parse("2026-03-02T12:00:00Z");

    @TempDir
    static Path root;

    @Autowired
    EmbeddedPostgres server;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    PasswordEncoder passwords;

    @DynamicPropertySource
    static void ownDirectory(DynamicPropertyRegistry registry) {
        registry.add("scrubline.data-directory", () -> root.resolve("data").toString());
    }

    @Test
    void whatWasThereAtTheBackupComesBackByteForByte() throws Exception {
        TestOrganisation organisation = organisations.open();
        SignedIn trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        SignedIn scorer = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        organisation.in(() -> rubrics.publishLibrary(scorer.personId()).orThrow());
        sign(organisation, trainee, scorer, 0);
        sign(organisation, trainee, scorer, 7);

        SampleInstallation installation = SampleInstallation.bundled(root.resolve("data"));
        Path backup = root.resolve("drill.backup");
        assertThat(installation.backup(backup).exit()).isZero();
        sign(organisation, trainee, scorer, 14);
        assertThat(installation.column("select count(*) from signed_sheet")).containsExactly("3");

        server.close();
        assertThat(FileSystemUtils.deleteRecursively(root.resolve("data"))).isTrue();
        SampleInstallation.Run restored = installation.restore(backup);
        assertThat(restored.exit()).as(restored.err()).isZero();

        Path again = root.resolve("again.backup");
        assertThat(installation.backup(again).exit()).isZero();
        assertThat(RestoreTests.manifest(again).tables())
                .isEqualTo(RestoreTests.manifest(backup).tables());
        assertThatThePasswordWorks(again, trainee.username());
    }

    private void sign(TestOrganisation organisation, SignedIn trainee, SignedIn scorer, int day) {
        history.signed(organisation, trainee, scorer, START.plus(Duration.ofDays(day)), Map.of("TF09", 3));
    }

    private void assertThatThePasswordWorks(Path backup, String username) throws Exception {
        StringBuilder accounts = new StringBuilder();
        new BackupReader(backup, Optional.empty()).rows((entry, rows) -> {
            if (entry.equals("tables/login_account.copy")) {
                accounts.append(new String(rows.readAllBytes(), StandardCharsets.UTF_8));
            }
        });
        String hash = accounts.toString()
                .lines()
                .map(line -> line.split("\t"))
                .filter(account -> account[1].equals(username))
                .map(account -> account[2])
                .findFirst()
                .orElseThrow();
        assertThat(passwords.matches(TestOrganisations.PASSWORD, hash)).isTrue();
        assertThat(passwords.matches("another sentence", hash)).isFalse();
    }
}
