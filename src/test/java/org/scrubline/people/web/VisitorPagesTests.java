package org.scrubline.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.people.VisitorRequest;
import org.scrubline.people.Visitors;
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
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** A visitor sees the named records on the named days, and nothing else. */
@ScrublineTest
class VisitorPagesTests {

    private static final String PURPOSE = "Accreditation visit, autumn";

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    Visitors visitors;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn visitor;
    SignedIn hallinor;
    SignedIn tekmor;
    SignedSheet first;
    SignedSheet second;
    SignedSheet ofTekmor;
    LocalDate today;

    @BeforeEach
    void signThreeSheets() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        visitor = organisation.join("Rhosyn Callavere", Role.VISITOR);
        hallinor = organisation.join("Fenna Hallinor", Role.TRAINEE);
        tekmor = organisation.join("Brisa Tekmor", Role.TRAINEE);
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        Instant ended = clock.instant().minus(Duration.ofDays(3));
        first = history.signed(organisation, hallinor, supervisor, ended, Map.of());
        second = history.signed(organisation, hallinor, supervisor, ended.plusSeconds(9000), Map.of());
        ofTekmor = history.signed(organisation, tekmor, supervisor, ended, Map.of());
        today = LocalDate.ofInstant(clock.instant(), organisation.programme().zone());
    }

    @Test
    void withoutAccessNothingIsOpen() throws Exception {
        assertThat(page("/visits", visitor)).contains("Nothing is open to you now");
        closed(first);
        answers("/progress/" + hallinor.personId(), visitor, 404);
    }

    @Test
    void aNamedTraineeOpensTheNumbersAndTheRecordsButNothingOfOthers() throws Exception {
        give(List.of(hallinor.personId()), List.of(), today, today.plusDays(10));

        assertThat(page("/visits", visitor)).contains(PURPOSE, "Fenna Hallinor", "/progress/" + hallinor.personId());
        open(first);
        open(second);
        closed(ofTekmor);
        assertThat(page("/progress/" + hallinor.personId(), visitor)).contains("Fenna Hallinor");
        answers("/progress/" + tekmor.personId(), visitor, 404);
        answers("/cohort", visitor, 404);
        answers("/visitors", visitor, 404);
        answers("/cases/" + first.caseId(), visitor, 404);
        mvc.perform(post("/signed/" + first.id() + "/remarks")
                        .param("body", "Seen.")
                        .with(LogIn.as(visitor))
                        .with(csrf()))
                .andExpect(status().isNotFound());
    }

    @Test
    void aNamedRecordOpensThatRecordAlone() throws Exception {
        give(List.of(), List.of(first.id()), today, today);

        assertThat(page("/visits", visitor)).contains("Signed record of case", "/signed/" + first.id());
        open(first);
        closed(second);
        answers("/progress/" + hallinor.personId(), visitor, 404);
    }

    @Test
    void everyReadingIsWrittenDownWithThePurpose() throws Exception {
        give(List.of(hallinor.personId()), List.of(), today, today);
        page("/signed/" + first.id(), visitor);
        page("/progress/" + hallinor.personId(), visitor);

        assertThat(page("/seen", hallinor))
                .contains("Rhosyn Callavere", "visitor", PURPOSE, "/signed/" + first.id(), "progress page");
        assertThat(page("/seen.csv", hallinor))
                .contains("Corisande Delmarr opened records of Fenna Hallinor to the visitor Rhosyn Callavere.");
    }

    @Test
    void beforeTheFirstDayAndAfterTheLastItIsClosed() throws Exception {
        give(List.of(hallinor.personId()), List.of(), today.plusDays(2), today.plusDays(3));
        Instant start =
                today.plusDays(2).atStartOfDay(organisation.programme().zone()).toInstant();
        Instant end =
                today.plusDays(4).atStartOfDay(organisation.programme().zone()).toInstant();

        assertThat(openAt(start.minusMillis(1))).isFalse();
        assertThat(openAt(start)).isTrue();
        assertThat(openAt(end.minusMillis(1))).isTrue();
        assertThat(openAt(end)).isFalse();
    }

    @Test
    void aDirectorEndsItEarlyAndOnlyADirector() throws Exception {
        give(List.of(hallinor.personId()), List.of(), today, today.plusDays(10));
        String address = endAddress();
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        for (SignedIn other : List.of(visitor, hallinor, administrator)) {
            mvc.perform(post(address).with(LogIn.as(other)).with(csrf())).andExpect(status().isNotFound());
        }
        open(first);

        mvc.perform(post(address).with(LogIn.as(director)).with(csrf())).andExpect(redirectedUrl("/visitors"));

        closed(first);
        assertThat(page("/visitors", director))
                .contains("Ended on", "by Corisande Delmarr")
                .doesNotContain("End now");
        mvc.perform(post(address).with(LogIn.as(director)).with(csrf())).andExpect(redirectedUrl("/visitors"));
        assertThat(page("/done?action=visitor-shown-out", director))
                .containsOnlyOnce("Corisande Delmarr closed the records of Fenna Hallinor");
    }

    @Test
    void theFormGivesAccessToWhatItNames() throws Exception {
        mvc.perform(form(today, today.plusDays(3))
                        .param("trainees", tekmor.personId().toString())
                        .param("records", "http://localhost:8080/signed/" + first.id() + "\n"))
                .andExpect(redirectedUrl("/visitors"));

        open(first);
        closed(second);
        open(ofTekmor);
        assertThat(page("/visitors", director))
                .contains("all signed records of Brisa Tekmor, the signed record of case", PURPOSE, "Open now")
                .doesNotContain("??");
    }

    @Test
    void aFormWithNothingInItNamesEveryGap() throws Exception {
        String page = mvc.perform(post("/visitors").with(LogIn.as(director)).with(csrf()))
                .andExpect(status().is(422))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page)
                .contains("Choose a visitor of this programme.", "Say what the visit is for")
                .contains("Choose at least one trainee or name one signed record.", "Enter a first day")
                .doesNotContain("??");
    }

    @ParameterizedTest
    @CsvSource({
        "-1, 3, Enter a first day",
        "0, -1, Enter a last day",
        "2, 1, Enter a last day",
        "0, 366, at most 366 days",
    })
    void daysThatDoNotFitAreRefusedAndTheRestIsKept(int from, int until, String sentence) throws Exception {
        String page = mvc.perform(form(today.plusDays(from), today.plusDays(until))
                        .param("trainees", hallinor.personId().toString()))
                .andExpect(status().is(422))
                .andReturn()
                .getResponse()
                .getContentAsString();
        assertThat(page).contains(sentence, PURPOSE, "checked=\"checked\"");
        assertThat(page("/visits", visitor)).contains("Nothing is open to you now");
    }

    @Test
    void theLongestTimeIsAYear() throws Exception {
        mvc.perform(form(today, today.plusDays(365))
                        .param("trainees", hallinor.personId().toString()))
                .andExpect(redirectedUrl("/visitors"));
    }

    @Test
    void recordsAndPeopleOfOthersCannotBeNamed() throws Exception {
        for (String record : List.of("not an address", "/signed/" + UUID.randomUUID(), "x".repeat(3000))) {
            mvc.perform(form(today, today).param("records", record)).andExpect(status().is(422));
        }
        SignedIn stranger = organisations.open().join("Asta Brevonne", Role.TRAINEE);
        mvc.perform(form(today, today).param("trainees", stranger.personId().toString()))
                .andExpect(status().is(422));
        mvc.perform(form(today, today).param("trainees", director.personId().toString()))
                .andExpect(status().is(422));
    }

    @Test
    void withoutAVisitorThePageSaysWhoAddsOne() throws Exception {
        TestOrganisation empty = organisations.open();
        SignedIn alone = empty.join("Asta Brevonne", Role.DIRECTOR);
        assertThat(page("/visitors", alone))
                .contains("There is no visitor yet", "No record was opened to a visitor yet.")
                .doesNotContain("<select");
        answers("/visitors", hallinor, 404);
        answers("/visits", hallinor, 404);
    }

    private MockHttpServletRequestBuilder form(LocalDate from, LocalDate until) {
        return post("/visitors")
                .param("visitor", visitor.personId().toString())
                .param("purpose", PURPOSE)
                .param("from", from.toString())
                .param("until", until.toString())
                .with(LogIn.as(director))
                .with(csrf());
    }

    private void give(List<UUID> trainees, List<UUID> records, LocalDate from, LocalDate until) {
        VisitorRequest request = new VisitorRequest(visitor.personId(), PURPOSE, trainees, records, from, until);
        organisation.in(() ->
                visitors.give(director, organisation.programme().id(), request).orThrow());
    }

    private boolean openAt(Instant at) {
        return clock.at(at, () -> organisation.in(() -> !visitors.open(visitor).isEmpty()));
    }

    private String endAddress() throws Exception {
        String page = page("/visitors", director);
        int at = page.indexOf("/visitors/");
        return page.substring(at, page.indexOf('"', at));
    }

    private void open(SignedSheet signed) throws Exception {
        answers("/signed/" + signed.id(), visitor, 200);
    }

    private void closed(SignedSheet signed) throws Exception {
        answers("/signed/" + signed.id(), visitor, 404);
        answers("/sheets/" + signed.sheetId() + "/signed", visitor, 404);
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
