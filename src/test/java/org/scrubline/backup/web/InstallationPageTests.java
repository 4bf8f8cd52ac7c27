package org.scrubline.backup.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.scrubline.backup.BackupAge;
import org.scrubline.backup.Installation;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TableView;
import org.scrubline.platform.Wording;
import org.scrubline.platform.database.DatabaseKind;
import org.scrubline.platform.jobs.JobRun;
import org.scrubline.platform.jobs.JobRuns;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class InstallationPageTests {

    private static final Instant NIGHT = Instant.parse("2026-11-27T02:30:00Z");

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Wording wording;

    private TestOrganisation organisation;

    /** An installation in the state a test is about. */
    private record Told(BackupAge newestBackup, Installation.Database database) implements Installation {}

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
    }

    @Test
    void anAdministratorSeesTheDatabaseAndItsVersion() throws Exception {
        String page = mvc.perform(get("/health-of-installation")
                        .with(LogIn.as(organisation.join("Tarn Oderlake", Role.ADMINISTRATOR))))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page)
                .contains("PostgreSQL 18", "a server of your own", "Version of the tables")
                .contains("Nightly backups are off.")
                .contains("href=\"/health-of-installation\"")
                .doesNotContain("??");
    }

    @ParameterizedTest
    @EnumSource(value = Role.class, mode = EnumSource.Mode.EXCLUDE, names = "ADMINISTRATOR")
    void forAnyoneElseThePageDoesNotExist(Role role) throws Exception {
        SignedIn who = organisation.join("Fenna Hallinor", role);
        mvc.perform(get("/health-of-installation").with(LogIn.as(who))).andExpect(status().isNotFound());
    }

    @ParameterizedTest
    @EnumSource(BackupAge.State.class)
    void everyStateOfTheBackupHasItsSentence(BackupAge.State state) {
        InstallationPage.Notice notice = page(age(state), List.of()).backup();
        assertThat(notice.title()).isNotBlank();
        assertThat(notice.text()).isNotBlank().doesNotContain("{");
        assertThat(notice.kind())
                .isEqualTo(state == BackupAge.State.RECENT || state == BackupAge.State.NOT_HERE ? "plain" : "careful");
    }

    @Test
    void anOldBackupSaysHowOldAndWhereToLook() {
        InstallationPage page =
                page(new BackupAge(BackupAge.State.OLD, NIGHT, Duration.ofHours(40), 12_600_000), List.of());
        assertThat(page.backup().text())
                .startsWith("It was written 40 hours ago")
                .contains("never older than 36 hours");
        assertThat(page.facts())
                .contains(new InstallationPage.Fact("Newest backup", "27 Nov 2026, 02:30 UTC"))
                .contains(new InstallationPage.Fact("Its size", "13 MB"));
    }

    @Test
    void everyJobTellsHowItsLastRunEnded() {
        InstallationPage page = page(
                age(BackupAge.State.NONE_YET),
                List.of(
                        new JobRun("done-job", null, NIGHT.plusSeconds(60), false, NIGHT, null, 0),
                        new JobRun("new-job", null, NIGHT, true, null, null, 0),
                        new JobRun("other-job", null, NIGHT, false, NIGHT, NIGHT.plusSeconds(120), 3),
                        new JobRun("queued-job", "somebody's", NIGHT, false, null, null, 0)));
        TableView jobs = Objects.requireNonNull(page.jobs());
        assertThat(jobs.rows().stream()
                        .map(row -> row.stream().map(TableView.Cell::text).toList()))
                .containsExactly(
                        List.of("done-job", "27 Nov 2026, 02:30 UTC", "done", "27 Nov 2026, 02:31 UTC"),
                        List.of("new-job", "–", "has not run yet", "running now"),
                        List.of(
                                "other-job",
                                "27 Nov 2026, 02:32 UTC",
                                "did not succeed 3 times in a row; the server’s log says why",
                                "27 Nov 2026, 02:30 UTC"));
        assertThat(page.waiting()).isEqualTo("1 further job waits or runs.");
    }

    private static BackupAge age(BackupAge.State state) {
        boolean there = state == BackupAge.State.RECENT || state == BackupAge.State.OLD;
        return new BackupAge(state, there ? NIGHT : null, there ? Duration.ofHours(2) : null, 0);
    }

    private InstallationPage page(BackupAge age, List<JobRun> runs) {
        Installation installation = new Told(age, new Installation.Database(DatabaseKind.BUNDLED, "18.6", "013"));
        JobRuns jobs = () -> runs;
        return new InstallationPages(installation, jobs, wording).page();
    }
}
