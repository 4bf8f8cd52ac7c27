package org.scrubline.progress.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.Cases;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.util.HtmlUtils;

/** The list of the next day: what is planned and what the signed sheets point to. */
@ScrublineTest
class ListPagesTests {

    /** A Tuesday evening. */
    private static final Instant EVENING = Instant.parse("2026-11-03T19:00:00Z");

    private static final LocalDate TOMORROW = LocalDate.of(2026, 11, 4);

    @Autowired
    MockMvc mvc;

    @Autowired
    Cases cases;

    @Autowired
    CaseChanges changes;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    ScrublineClock clock;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;
    SignedIn second;

    @BeforeEach
    void openTheProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        second = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
    }

    @Test
    void anEmptyListSaysWhyForBoth() throws Exception {
        assertThat(list(here.supervisor()))
                .contains("Nothing is planned", "names you as its supervisor", "/cases/plan");
        assertThat(list(here.trainee())).contains("Nothing is planned", "plans it for you");
        assertThat(status(here.director())).isEqualTo(404);
    }

    @Test
    void tomorrowsCaseShowsFocusCountsAndDatesAndNoOtherScorer() throws Exception {
        weakFlaps(4, Duration.ofDays(20));
        UUID planned = plan("K7-301", TOMORROW);
        clock.at(
                EVENING,
                () -> here.organisation()
                        .in(() -> changes.setGoal(here.trainee(), planned, "Even flap thickness")
                                .orThrow()));

        String page = list(here.supervisor());

        assertThat(page)
                .contains("Wednesday 4 November", "Fenna Hallinor: Trabeculectomy, fornix-based flap")
                .contains(
                        "Supervision planned: supervisor scrubbed.",
                        "No committee decision on a supervision level is recorded.")
                .contains("4 such cases operated.", "Cases with a signed sheet: 4; supervisors who signed: 1.")
                .contains("Last on 14 Oct 2026, 20 days ago.")
                .contains("Even flap thickness", "Lamellar dissection")
                .contains("0 of 4 scores at level 4 or 5, last seen 14 Oct 2026")
                .doesNotContain("Vantrelle", "A long gap");
    }

    @Test
    void aGapOfFiftySixDaysIsSaid() throws Exception {
        weakFlaps(3, Duration.ofDays(56));
        plan("K7-302", TOMORROW);
        assertThat(list(here.supervisor())).contains("A long gap: begin with cases of band A");
    }

    @Test
    void whatIsTooFarAheadShowsNothingOfTheTraineesSheets() throws Exception {
        weakFlaps(4, Duration.ofDays(20));
        plan("K7-303", TOMORROW.plusDays(1));
        plan("K7-304", null);
        assertThat(list(here.supervisor()))
                .contains("No case is planned for today or tomorrow.", "K7-303, Thursday 5 November", "no day set")
                .doesNotContain("Suggested focus", "such cases operated");
        assertThat(list(here.trainee())).as("one's own").contains("Suggested focus", "such cases operated");
    }

    @Test
    void withoutASignedSheetTheEvidenceIsInsufficientAndSoSaid() throws Exception {
        plan("K7-305", TOMORROW);
        assertThat(list(here.supervisor()))
                .contains("Insufficient evidence: no signed sheet counts yet", "This would be the first.")
                .doesNotContain("Suggested focus");
        assertThat(list(second)).as("another supervisor's list").contains("Nothing is planned");
    }

    private void weakFlaps(int number, Duration ago) {
        for (int n = 0; n < number; n++) {
            history.signed(
                    here.organisation(),
                    here.trainee(),
                    second,
                    EVENING.minus(ago).minus(Duration.ofDays(n)),
                    Map.of("TF09", 2));
        }
    }

    private UUID plan(String reference, @org.jspecify.annotations.Nullable LocalDate day) {
        TestProgramme.Entry entry = here.entry(reference, null);
        if (day != null) {
            entry.plannedOn(day);
        }
        return clock.at(
                EVENING,
                () -> here.organisation()
                        .in(() -> cases.log(here.trainee(), entry.done())
                                .orThrow()
                                .id()));
    }

    private String list(SignedIn who) throws Exception {
        return clock.at(EVENING, () -> {
            try {
                String body = mvc.perform(get("/list").with(LogIn.as(who)))
                        .andReturn()
                        .getResponse()
                        .getContentAsString();
                assertThat(body).doesNotContain("??");
                return HtmlUtils.htmlUnescape(body);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private int status(SignedIn who) throws Exception {
        return mvc.perform(get("/list").with(LogIn.as(who)))
                .andReturn()
                .getResponse()
                .getStatus();
    }
}
