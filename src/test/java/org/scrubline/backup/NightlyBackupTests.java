package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.backup.BackupAge.State;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.support.StaticListableBeanFactory;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.Status;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.boot.test.context.runner.ApplicationContextRunner;
import org.springframework.core.env.Environment;

@ScrublineTest
class NightlyBackupTests {

    private static final Instant NIGHT = Instant.parse("2026-11-27T02:30:00Z");

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcConnectionDetails connection;

    @Autowired
    InstallationQueries queries;

    @Autowired
    Environment environment;

    @TempDir
    Path directory;

    @Test
    void theNewestBackupsStayAndTheOldestMakeRoom() throws Exception {
        Files.writeString(directory.resolve("before-the-move.backup"), "somebody else's");
        for (int night = 0; night < 3; night++) {
            backupAt(NIGHT.plus(night, ChronoUnit.DAYS), 2);
        }
        assertThat(names())
                .containsExactly(
                        "before-the-move.backup",
                        "scrubline-20261128T023000Z.backup",
                        "scrubline-20261129T023000Z.backup");
        assertThat(RestoreTests.manifest(directory.resolve("scrubline-20261129T023000Z.backup"))
                        .created())
                .isEqualTo(NIGHT.plus(2, ChronoUnit.DAYS));
    }

    @Test
    void aNightThatDoesNotSucceedRemovesNothing() throws Exception {
        backupAt(NIGHT, 1);
        Files.writeString(directory.resolve("scrubline-20261128T023000Z.backup"), "in the way");
        assertThatThrownBy(() -> backupAt(NIGHT.plus(1, ChronoUnit.DAYS), 1)).hasMessageContaining("already a file");
        assertThat(names()).contains("scrubline-20261127T023000Z.backup");
    }

    @Test
    void aPassphraseFileSealsTheNightlyBackup() throws Exception {
        Path passphrase = Files.writeString(directory.resolve("passphrase"), "a quiet backup sentence");
        clock.at(NIGHT, () -> {
            new NightlyBackup(settings(3, passphrase), connection, clock).run();
            return true;
        });
        assertThatThrownBy(() -> RestoreTests.manifest(directory.resolve("scrubline-20261127T023000Z.backup")))
                .hasMessageContaining("The backup is sealed");
    }

    @ParameterizedTest
    @CsvSource({"0,RECENT", "36,RECENT", "37,OLD", "500,OLD"})
    void monitoringLearnsTheAgeAndIsNeverToldDown(int hours, State state) throws Exception {
        backupAt(NIGHT, 3);
        Health health = healthAt(NIGHT.plus(hours, ChronoUnit.HOURS), true);
        assertThat(health.getStatus()).isEqualTo(Status.UP);
        assertThat(health.getDetails())
                .containsEntry("state", state.name())
                .containsEntry("ageHours", (long) hours)
                .containsEntry("newest", "2026-11-27T02:30:00Z");
        assertThat(health.getDetails().containsKey("warning")).isEqualTo(state == State.OLD);
    }

    @Test
    void monitoringLearnsThatThereIsNoBackup() {
        assertThat(healthAt(NIGHT, true).getDetails())
                .containsEntry("state", "NONE_YET")
                .containsEntry("warning", "there is no backup yet");
        assertThat(healthAt(NIGHT, false).getDetails())
                .containsEntry("state", "NOT_HERE")
                .doesNotContainKey("warning");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "|true",
                "spring.datasource.url=embedded|true",
                "spring.datasource.url=jdbc:postgresql://db/scrubline|false",
                "spring.datasource.url=jdbc:postgresql://db/scrubline,scrubline.backup.nightly=true|true",
                "scrubline.backup.nightly=false|false"
            })
    void nightlyBackupsAreOnWithTheBundledDatabaseUnlessSaidOtherwise(String properties, boolean on) {
        new ApplicationContextRunner()
                .withUserConfiguration(BackupConfiguration.class)
                .withBean(ScrublineClock.class, () -> clock)
                .withBean(JdbcConnectionDetails.class, () -> connection)
                .withPropertyValues(
                        "scrubline.backup.directory=" + directory,
                        "scrubline.backup.keep=14",
                        "scrubline.backup.at=02:30")
                .withPropertyValues(properties == null ? new String[0] : properties.split(","))
                .run(context ->
                        assertThat(context.getBeansOfType(NightlyBackup.class)).hasSize(on ? 1 : 0));
    }

    private void backupAt(Instant instant, int keep) {
        clock.at(instant, () -> {
            new NightlyBackup(settings(keep, null), connection, clock).run();
            return true;
        });
    }

    private Health healthAt(Instant instant, boolean nightly) {
        StaticListableBeanFactory beans = new StaticListableBeanFactory();
        if (nightly) {
            beans.addBean("nightly", new NightlyBackup(settings(3, null), connection, clock));
        }
        Installation installation = new ObservedInstallation(
                queries, settings(3, null), beans.getBeanProvider(NightlyBackup.class), environment, clock);
        return clock.at(instant, () -> new BackupHealthIndicator(installation).health());
    }

    private BackupSettings settings(int keep, @Nullable Path passphraseFile) {
        return new BackupSettings(directory, keep, "02:30", passphraseFile);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(directory)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
