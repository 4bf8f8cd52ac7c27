package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.retention.RecordHold;
import org.scrubline.retention.Retention;
import org.scrubline.retention.RetentionTerms;
import org.scrubline.rubric.Procedures;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

/** Open sheets nobody works on are announced, then removed; everything else stays. */
@ScrublineTest
class OldSheetsTests {

    private static final Instant ENDED = Instant.parse("2026-01-05T12:00:00Z");

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture fixture;

    @Autowired
    SigningFixture signing;

    @Autowired
    OldSheets oldSheets;

    @Autowired
    OldSheetsJob job;

    @Autowired
    JobsNow jobs;

    @Autowired
    Sheets sheets;

    @Autowired
    Cases cases;

    @Autowired
    Retention retention;

    @Autowired
    MockMvc mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SignedIn director;
    UUID sheet;

    @BeforeEach
    void openASheet() {
        theatre = fixture.theatre(organisations);
        director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        sheet = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
    }

    @Test
    void theScorerIsToldFromDaySeventySixAndNotBefore() throws Exception {
        review(day(76).minusMillis(1));
        assertThat(toScore(day(76))).isEmpty();

        review(day(76));

        assertThat(toScore(day(76))).containsExactly(day(90));
        String page = clock.at(day(77), () -> page("/to-score", theatre.supervisor()));
        assertThat(page)
                .contains("Nothing has changed on this sheet since 5 Jan 2026.")
                .contains("It will be removed on 5 Apr 2026; any change keeps it.");
        assertThat(entries("draft-warned"))
                .contains("The server announced that the open sheet about Fenna Hallinor in case K7-", "2026-04-05");
    }

    @Test
    void itGoesOnDayNinetyAndTheCaseSaysSo() throws Exception {
        UUID caseId = read().caseId();
        review(day(76));
        review(day(90).minusMillis(1));
        assertThat(read().state()).isEqualTo(SheetState.OPEN);

        review(day(90));

        assertThatThrownBy(this::read).isInstanceOf(NotFound.class);
        for (SignedIn who : List.of(theatre.trainee(), theatre.supervisor(), director)) {
            assertThat(page("/cases/" + caseId, who))
                    .contains("Ansel Verrin was asked to score Fenna Hallinor.")
                    .contains("Sheet removed after 90 days without a change.")
                    .doesNotContain("??", "/sheets/" + sheet);
        }
        assertThat(page("/my-cases", theatre.trainee())).contains("not scored by Ansel Verrin, sheet removed");
        assertThat(entries("draft-removed"))
                .contains("The server removed the open sheet about Fenna Hallinor in case K7-")
                .contains("90 days without a change.");
        assertThat(page("/cohort", director)).contains("Of 1 sheet asked for, signed or not.");
    }

    @Test
    void anyChangeKeepsItAndTakesTheNoticeBack() {
        signing.change(theatre, sheet, new SheetChange.SetStep("TF01", new StepState.Scored(4)));
        review(day(90));
        assertThat(toScore(day(90)))
                .as("changed today, whatever the age of the case")
                .isEmpty();

        UUID other = fixture.open(theatre, Procedures.TRAB_FORNIX, ENDED);
        review(day(80));
        clock.at(day(89), () -> {
            signing.change(theatre, other, new SheetChange.SetStep("TF01", new StepState.Scored(4)));
            return true;
        });
        review(day(95));
        assertThat(state(other)).isEqualTo(SheetState.OPEN);
        review(day(89 + 76));
        review(day(89 + 90));
        assertThatThrownBy(() -> state(other)).isInstanceOf(NotFound.class);
    }

    @Test
    void nobodyLosesASheetWithoutFourteenDaysOfNotice() {
        review(day(400));
        assertThat(toScore(day(400))).containsExactly(day(414));
        review(day(414).minusMillis(1));
        assertThat(read().state()).isEqualTo(SheetState.OPEN);
        review(day(414));
        assertThatThrownBy(this::read).isInstanceOf(NotFound.class);
    }

    @Test
    void underAHoldNothingGoesAndAfterItTheNoticeBeginsAgain() {
        review(day(76));
        RecordHold hold = theatre.organisation()
                .in(() -> retention
                        .hold(director, programme(), theatre.trainee().personId(), "A contest is open.")
                        .orThrow());
        assertThat(toScore(day(77))).isEmpty();
        review(day(90));
        review(day(200));
        assertThat(read().state()).isEqualTo(SheetState.OPEN);

        theatre.organisation().in(() -> {
            retention.end(director, hold.id());
            return true;
        });
        review(day(201));
        review(day(214));
        assertThat(read().state()).isEqualTo(SheetState.OPEN);
        review(day(215));
        assertThatThrownBy(this::read).isInstanceOf(NotFound.class);
    }

    @Test
    void theProgrammesOwnTimeCounts() {
        theatre.organisation()
                .in(() -> retention
                        .change(director, programme(), new RetentionTerms(40, 6, 30))
                        .orThrow());
        review(day(26));
        review(day(40));
        assertThatThrownBy(this::read).isInstanceOf(NotFound.class);
    }

    @Test
    void aSignedSheetIsNeverRemovedNotEvenByAStatement() {
        UUID signed = signing.signed(theatre, clock.instant().minus(Duration.ofDays(1)))
                .sheetId();
        review(clock.instant().plus(500, ChronoUnit.DAYS));
        review(clock.instant().plus(600, ChronoUnit.DAYS));
        assertThat(state(signed)).isEqualTo(SheetState.SIGNED);

        jdbcDelete(signed, "a sheet in state SIGNED stays");
    }

    @Test
    void theNightlyJobGoesThroughEveryOrganisation() {
        Theatre elsewhere = fixture.theatre(organisations);
        UUID other = fixture.open(elsewhere, Procedures.TRAB_FORNIX, ENDED);
        clock.at(day(80), () -> {
            jobs.run(job);
            return true;
        });
        assertThat(toScore(day(80))).hasSize(1);
        assertThat(elsewhere
                        .organisation()
                        .in(() -> sheets.toScore(elsewhere.supervisor().personId())))
                .filteredOn(open -> open.sheetId().equals(other))
                .singleElement()
                .extracting(OpenSheet::removedOn)
                .isNotNull();
    }

    private void jdbcDelete(UUID id, String answer) {
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> transaction.execute(
                                status -> jdbc.sql("delete from score_sheet where tenant_id = :tenant and id = :id")
                                        .param("tenant", TenantScope.require())
                                        .param("id", id)
                                        .update())))
                .hasMessageContaining(answer);
    }

    private static Instant day(int days) {
        return ENDED.plus(Duration.ofDays(days));
    }

    private void review(Instant at) {
        clock.at(
                at,
                () -> theatre.organisation().in(() -> {
                    oldSheets.review();
                    return true;
                }));
    }

    /** Days of removal announced to the scorer. */
    private List<Instant> toScore(Instant at) {
        return clock.at(
                at,
                () -> theatre.organisation()
                        .in(() -> sheets.toScore(theatre.supervisor().personId()).stream()
                                .map(OpenSheet::removedOn)
                                .filter(java.util.Objects::nonNull)
                                .toList()));
    }

    private Sheet read() {
        return signing.read(theatre, sheet);
    }

    private SheetState state(UUID id) {
        return signing.read(theatre, id).state();
    }

    private UUID programme() {
        return theatre.organisation().programme().id();
    }

    private String entries(String action) {
        return page("/done?action=" + action, director);
    }

    private String page(String path, SignedIn who) {
        try {
            return mvc.perform(get(path).with(LogIn.as(who)))
                    .andExpect(status().isOk())
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
        } catch (Exception e) {
            throw new AssertionError(path, e);
        }
    }
}
