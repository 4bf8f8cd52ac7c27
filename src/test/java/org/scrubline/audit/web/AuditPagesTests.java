package org.scrubline.audit.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.people.People;
import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.support.PropertiesLoaderUtils;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.context.request.RequestContextHolder;

@ScrublineTest
class AuditPagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    People people;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn administrator;
    SignedIn trainee;
    SignedIn supervisor;
    SignedSheet signed;

    @BeforeEach
    void signOneSheet() {
        // The test framework sets a request aside for the test itself; outside of the pages there is none.
        RequestContextHolder.resetRequestAttributes();
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        Instant ended = clock.instant().minus(Duration.ofDays(2));
        signed = history.signed(organisation, trainee, supervisor, ended, Map.of());
    }

    @Test
    void theTraineeSeesWhoReadWhichRecordInWhichRole() throws Exception {
        assertThat(page("/seen", trainee)).contains("Nobody has looked yet");

        page("/signed/" + signed.id(), director);
        page("/signed/" + signed.id(), director);
        page("/signed/" + signed.id(), trainee);
        page("/progress/" + trainee.personId(), director);

        String seen = page("/seen", trainee);
        assertThat(seen)
                .contains("Corisande Delmarr", "programme director", "href=\"/signed/" + signed.id() + "\"")
                .contains("progress page", "Newest first")
                .containsPattern("[0-9]{2}:[0-9]{2} (GMT|BST)")
                .doesNotContain("Nobody has looked yet", "Fenna Hallinor</th>", "??");
        assertThat(seen.split("<tr>", -1)).as("head and two readings").hasSize(4);
    }

    @Test
    void theStepsBehindTheNumbersAreARecordToo() throws Exception {
        page("/progress/" + trainee.personId() + "/steps/TF09?procedure=TRAB_FORNIX", director);
        assertThat(page("/seen", trainee)).contains("Corisande Delmarr", "progress page");
    }

    @Test
    void nobodySeesWhoLookedAtSomebodyElse() throws Exception {
        page("/signed/" + signed.id(), director);
        SignedIn other = organisation.join("Brisa Tekmor", Role.TRAINEE);
        assertThat(page("/seen", other)).contains("Nobody has looked yet").doesNotContain("Corisande");
    }

    @Test
    void theListOfTraineesIsOneReadingAboutNobody() throws Exception {
        page("/cohort", director);
        page("/cohort", director);
        assertThat(page("/seen", trainee)).contains("Nobody has looked yet");
        assertThat(page("/done?action=seen-programme-list", director))
                .containsOnlyOnce("Corisande Delmarr read the list of trainees of Programme.");
    }

    @Test
    void directorAndAdministratorReadWhatWasDoneInSentences() throws Exception {
        for (SignedIn who : new SignedIn[] {director, administrator}) {
            assertThat(page("/done", who))
                    .contains("Ottilie Brannock signed the sheet about Fenna Hallinor in case")
                    .contains("Fenna Hallinor logged case")
                    .contains("The server added Ottilie Brannock as supervisor.")
                    .contains("Corisande Delmarr published the rubric Bleb needling and revision 1.0")
                    .contains("No log-in to an account of this programme was refused")
                    .doesNotContain("??");
        }
        for (SignedIn who : new SignedIn[] {trainee, supervisor}) {
            answers("/done", who, 404);
            answers("/done.csv", who, 404);
        }
    }

    @Test
    void whatConcernsAccountsIsOneChoiceAndGuessingIsSaid() throws Exception {
        assertThat(page("/done?action=security", administrator))
                .contains("added Ottilie Brannock as supervisor")
                .doesNotContain("signed the sheet")
                .doesNotContain("somebody may be guessing");
        for (int i = 0; i < 20; i++) {
            guess(trainee.username());
        }
        assertThat(page("/done", administrator)).contains("somebody may be guessing");
    }

    private void guess(String username) throws Exception {
        mvc.perform(post("/login")
                .servletPath("/login")
                .param("username", username)
                .param("password", "not the password")
                .with(csrf())
                .with(request -> {
                    request.setRemoteAddr("198.51.100.34");
                    return request;
                }));
    }

    @Test
    void anotherOrganisationOrProgrammeIsNotInTheList() throws Exception {
        TestOrganisation elsewhere = organisations.open();
        SignedIn stranger = elsewhere.join("Asta Brevonne", Role.DIRECTOR);
        assertThat(page("/done", stranger)).doesNotContain("Fenna Hallinor");

        SignedIn neighbour = organisation.in(() -> {
            People.NewPerson added = people.addPerson(
                            people.addProgramme("Second programme", "Europe/London")
                                    .orThrow()
                                    .id(),
                            "Hadi Nkolaris",
                            "n" + organisation.tenant().toString().substring(0, 12),
                            Role.DIRECTOR)
                    .orThrow();
            return new SignedIn(
                    added.accountId(), "", organisation.tenant(), "", added.personId(), "", java.util.Set.of());
        });
        assertThat(page("/done", neighbour))
                .contains("The server added Hadi Nkolaris as programme director.")
                .doesNotContain("Fenna Hallinor", "published the rubric");
    }

    @Test
    void theListNarrowsByPersonActionAndDay() throws Exception {
        assertThat(page("/done?person=" + supervisor.personId() + "&action=sheet-signed", director))
                .contains("signed the sheet about")
                .doesNotContain("logged case", "published the rubric");
        assertThat(page("/done?person=" + administrator.personId() + "&action=sheet-signed", director))
                .contains("Nothing was done that fits this choice.")
                .doesNotContain("signed the sheet about");
        String today = java.time.LocalDate.ofInstant(
                        clock.instant(), organisation.programme().zone())
                .toString();
        assertThat(page("/done?from=" + today, director))
                .contains("published the rubric")
                .doesNotContain("signed the sheet about");
        assertThat(page("/done?until=2020-01-01", director)).contains("Nothing was done that fits");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "from=yesterday",
                "from=2026-02-30",
                "until=+999999999-12-31",
                "person=me",
                "action=everything",
                "from=2026-03-02&until=2026-03-01"
            })
    void aFilterThatCannotBeReadIsExplainedAndKept(String query) throws Exception {
        String page = mvc.perform(get("/done?" + query).with(LogIn.as(director)))
                .andExpect(status().is(422))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains("error-summary").doesNotContain("signed the sheet about", "??");
        mvc.perform(get("/done.csv?" + query).with(LogIn.as(director))).andExpect(status().is3xxRedirection());
    }

    @Test
    void aLongListIsReadPageByPageInBothDirections() throws Exception {
        for (int hour = 0; hour < 120; hour++) {
            Instant at = clock.instant().minus(Duration.ofHours(hour));
            clock.at(
                    at,
                    () -> organisation.in(() -> {
                        events.publishEvent(new RecordSeen(
                                director,
                                trainee.personId(),
                                organisation.programme().id(),
                                new Audited.Item("progress", trainee.personId(), null, ""),
                                null));
                        return true;
                    }));
        }
        String first = page("/seen", trainee);
        String second = page(link(first, "next"), trainee);
        String third = page(link(second, "next"), trainee);
        assertThat(first).doesNotContain("rel=\"prev\"");
        assertThat(third).doesNotContain("rel=\"next\"");
        assertThat(rows(first)).isEqualTo(50);
        assertThat(rows(second)).isEqualTo(50);
        assertThat(rows(third)).isEqualTo(20);
        assertThat(table(page(link(third, "prev"), trainee))).isEqualTo(table(second));
        assertThat(table(page(link(second, "prev"), trainee))).isEqualTo(table(first));
    }

    @Test
    void theFileHoldsEveryEntryAndNoFormula() throws Exception {
        SignedIn sly = organisation.join("=HYPERLINK(A1)", Role.SUPERVISOR);

        String file = page("/done.csv?action=person-added", director);

        assertThat(file)
                .startsWith("sequence,server_time_utc,")
                .contains(",'=HYPERLINK(A1),")
                .doesNotContain(",=");
        assertThat(file.lines().count())
                .as("head, five people and who countersigned")
                .isEqualTo(7);
        assertThat(file).contains(sly.personId().toString(), ",system,");
    }

    @Test
    void ownEntriesCanBeTakenAwayWithoutTheAddressesOfOthers() throws Exception {
        page("/signed/" + signed.id(), director);

        String file = page("/seen.csv", trainee);

        assertThat(file)
                .contains("seen-signed-sheet,", "sheet-signed,", "case-logged,")
                .doesNotContain("127.0.0.1");
        assertThat(page("/done.csv", director)).contains("127.0.0.1");
        assertThat(page("/seen.csv", organisation.join("Brisa Tekmor", Role.TRAINEE)))
                .doesNotContain("seen-signed-sheet");
    }

    @Test
    void everyActionHasASentenceAndAnEntryInTheFilter() throws Exception {
        Properties messages = PropertiesLoaderUtils.loadProperties(new ClassPathResource("messages/audit.properties"));
        assertThat(messages.stringPropertyNames())
                .filteredOn(key -> key.startsWith("audit.action."))
                .containsExactlyInAnyOrderElementsOf(
                        java.util.stream.Stream.concat(Actions.KNOWN.stream(), java.util.stream.Stream.of("other"))
                                .map(action -> "audit.action." + action)
                                .toList());
        assertThat(messages.stringPropertyNames())
                .filteredOn(key -> key.startsWith("audit.kind."))
                .containsExactlyInAnyOrderElementsOf(Actions.KNOWN.stream()
                        .map(action -> "audit.kind." + action)
                        .toList());
    }

    @Test
    void anIdInTheAddressThatIsNoNumberIsABadRequest() throws Exception {
        answers("/seen?older=x", trainee, 400);
        mvc.perform(get("/done.csv?from=x").with(LogIn.as(director))).andExpect(redirectedUrl("/done?from=x"));
    }

    private static String link(String page, String rel) {
        Matcher link = Pattern.compile("rel=\"" + rel + "\" href=\"([^\"]+)\"").matcher(page);
        assertThat(link.find()).as("a link to " + rel).isTrue();
        return link.group(1).replace("&amp;", "&");
    }

    private static int rows(String page) {
        return table(page).split("<tr>", -1).length - 1;
    }

    private static String table(String page) {
        return page.substring(page.indexOf("<tbody>"), page.indexOf("</tbody>"));
    }

    private String page(String path, SignedIn who) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private void answers(String path, SignedIn who, int expected) throws Exception {
        mvc.perform(get(path).with(LogIn.as(who))).andExpect(status().is(expected));
    }
}
