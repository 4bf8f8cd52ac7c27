package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.people.Invitations;
import org.scrubline.people.People;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.AuthenticatorApp;
import org.scrubline.platform.factor.SecondFactors;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;

/** One person, one log-in, two organisations: director in the first, trainee in the second. */
@DoorsTest
class SeveralOrganisationsTests {

    private static final String CHOOSE = "/login/organisation";
    private static final String CHANGE = "/account/organisation";
    private static final String TAKE_UP = "/account/invitation";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    Invitations invitations;

    @Autowired
    SheetFixture sheets;

    @Autowired
    SecondFactors factors;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation first;
    TestOrganisation second;
    SignedIn director;
    SignedIn ward;
    UUID invited;
    ProviderBrowser browser;

    @BeforeEach
    void open() throws Exception {
        Theatre theatre = sheets.theatre(organisations);
        first = theatre.organisation();
        ward = theatre.trainee();
        second = sheets.theatre(organisations).organisation();
        director = first.join("Corisande Delmarr", Role.DIRECTOR);
        browser = new ProviderBrowser(mockMvc);
        browser.password(director).andExpect(redirectedUrl("/"));
    }

    /** A code for the person as a trainee of the second organisation. */
    private String code() {
        return code(second, "t" + UUID.randomUUID().toString().substring(0, 12));
    }

    private String code(TestOrganisation by, String username) {
        return by.in(() -> {
            UUID programme = by.programme().id();
            invited = people.addPerson(programme, "Corisande Delmarr", username, Role.TRAINEE)
                    .orThrow()
                    .personId();
            return invitations
                    .make(programme, invited, InvitationLife.DAY)
                    .orThrow()
                    .code();
        });
    }

    private ResultActions takeUp(String code) throws Exception {
        return browser.send(post(TAKE_UP).param("code", code));
    }

    private void belongToBoth() throws Exception {
        takeUp(code()).andExpect(redirectedUrl(CHANGE));
    }

    private ResultActions choose(String path, TestOrganisation organisation) throws Exception {
        return browser.send(
                post(path).param("organisation", organisation.tenant().toString()));
    }

    private int answer(String path) throws Exception {
        return browser.send(get(path).accept("text/html"))
                .andReturn()
                .getResponse()
                .getStatus();
    }

    private void close(TestOrganisation organisation, UUID person) {
        organisation.in(() -> {
            people.setActive(person, false);
            return true;
        });
    }

    private List<String> written(TestOrganisation organisation) {
        return organisation.in(() -> transaction.execute(
                status -> jdbc.sql("select e.action from audit_entry e where e.action in ('logged-in',"
                                + " 'invitation-taken-up') and e.actor_id in (:one, :other) order by e.sequence")
                        .param("one", director.personId())
                        .param("other", invited)
                        .query(String.class)
                        .list()));
    }

    @Test
    void untilAnOrganisationIsChosenNothingElseIsOpen() throws Exception {
        belongToBoth();
        browser = new ProviderBrowser(mockMvc);
        browser.password(director).andExpect(redirectedUrl("/"));
        for (String path :
                List.of("/", "/settings", "/progress", "/account/keys", CHANGE, TAKE_UP, "/account/sessions")) {
            browser.send(get(path).accept("text/html")).andExpect(redirectedUrl(CHOOSE));
        }
        String page = browser.page(CHOOSE);
        assertThat(page)
                .contains(
                        "Where do you work now?",
                        first.tenant().toString(),
                        second.tenant().toString())
                .doesNotContain("Corisande Delmarr", "/settings");
        assertThat(written(second)).as("nobody is in yet").containsExactly("invitation-taken-up");

        browser.send(post(CHOOSE)
                        .param("organisation", organisations.open().tenant().toString()))
                .andExpect(status().isNotFound());
        browser.send(post(CHOOSE).param("organisation", "x")).andExpect(status().isNotFound());
        browser.send(get("/progress").accept("text/html")).andExpect(redirectedUrl(CHOOSE));
        choose(CHOOSE, second).andExpect(redirectedUrlPattern("**/progress*"));
        assertThat(answer("/progress")).isEqualTo(200);
        assertThat(written(second)).containsExactly("invitation-taken-up", "logged-in");
        browser.send(get(CHOOSE)).andExpect(redirectedUrl("/"));
    }

    @Test
    void rightsAndRecordsAreThoseOfTheOrganisationChosenAlone() throws Exception {
        belongToBoth();
        assertThat(answer("/settings")).as("still in the first").isEqualTo(200);
        String record = "/progress/" + ward.personId();
        assertThat(answer(record)).isEqualTo(200);

        choose(CHANGE, second).andExpect(redirectedUrl("/"));
        assertThat(answer("/settings")).isEqualTo(404);
        assertThat(answer(record)).isEqualTo(404);
        assertThat(answer("/progress")).isEqualTo(200);
        assertThat(browser.page("/account/keys")).contains("Other organisation", CHANGE);

        choose(CHANGE, first).andExpect(redirectedUrl("/"));
        assertThat(answer("/settings")).isEqualTo(200);
        assertThat(answer(record)).isEqualTo(200);
        assertThat(written(first)).containsExactly("logged-in", "logged-in");
        assertThat(written(second)).containsExactly("invitation-taken-up", "logged-in");
        choose(CHANGE, organisations.open()).andExpect(status().isNotFound());
    }

    @Test
    void theSessionGetsANewNameWithEachChoice() throws Exception {
        belongToBoth();
        String before = session();
        choose(CHANGE, second);
        assertThat(session()).isNotEqualTo(before);
    }

    private String session() {
        return jdbc.sql("select session_id from spring_session where principal_name = :name")
                .param("name", director.username())
                .query(String.class)
                .single();
    }

    @Test
    void whoLeftOneStillGetsIntoTheOther() throws Exception {
        belongToBoth();
        UUID trainee = invited;
        close(first, director.personId());
        assertThat(answer("/settings")).as("the session was in the first").isEqualTo(302);
        browser = new ProviderBrowser(mockMvc);
        browser.password(director);
        assertThat(answer("/progress")).isEqualTo(200);
        assertThat(answer("/settings")).isEqualTo(404);
        assertThat(answer(CHANGE)).isEqualTo(404);

        close(second, trainee);
        assertThat(answer("/progress")).isEqualTo(302);
        first.in(() -> {
            people.setActive(director.personId(), true);
            return true;
        });
        browser = new ProviderBrowser(mockMvc);
        browser.password(director);
        assertThat(answer("/settings")).isEqualTo(200);
        assertThat(answer(CHANGE)).isEqualTo(404);
    }

    @Test
    void theAppIsShownBeforeAnyOrganisationIsNamed() throws Exception {
        belongToBoth();
        String sealed = factors.newSecret(director.accountId());
        AuthenticatorApp app = new AuthenticatorApp(
                factors.offer(director, sealed).orElseThrow().secret());
        first.in(() -> factors.add(director, sealed, app.code(clock.instant())).orThrow());
        browser = new ProviderBrowser(mockMvc);
        browser.password(director);
        browser.send(get("/progress").accept("text/html")).andExpect(redirectedUrl("/login/code"));
        browser.send(get(CHOOSE)).andExpect(redirectedUrl("/"));
        choose(CHOOSE, second).andExpect(redirectedUrl("/"));
        assertThat(answer("/progress")).isEqualTo(302);

        String next = app.code(clock.instant().plus(Duration.ofSeconds(30)));
        browser.send(post("/login/code").param("code", next));
        browser.send(get("/account/keys").accept("text/html")).andExpect(redirectedUrl(CHOOSE));
        choose(CHOOSE, second);
        assertThat(answer("/progress")).isEqualTo(200);
    }

    @Test
    void theProviderOfOneOrganisationOpensThatOneAlone() throws Exception {
        TestOrganisation orlin = organisations.at(RunningProvider.ORLIN);
        String username = "t" + UUID.randomUUID().toString().substring(0, 12);
        takeUp(code(orlin, username)).andExpect(redirectedUrl(CHANGE));
        choose(CHANGE, orlin);
        browser.send(post("/account/provider"));
        browser.through("orlin", username, Map.of()).andExpect(redirectedUrl("/account/provider?linked"));

        ProviderBrowser vouched = new ProviderBrowser(mockMvc);
        vouched.through("orlin", username, Map.of());
        assertThat(vouched.page("/account/keys")).contains("Corisande Delmarr").doesNotContain("Other organisation");
        vouched.send(get(CHANGE)).andExpect(status().isNotFound());
        vouched.send(post(CHANGE).param("organisation", first.tenant().toString()))
                .andExpect(status().isNotFound());
        vouched.send(get("/settings")).andExpect(status().isNotFound());
        vouched.send(post(TAKE_UP).param("code", code())).andExpect(status().isForbidden());
    }

    @Test
    void anInvitationServesOnceAndItsOwnAccountIsClosed() throws Exception {
        String username = "t" + UUID.randomUUID().toString().substring(0, 12);
        String code = code(second, username);
        takeUp(code).andExpect(redirectedUrl(CHANGE));
        takeUp(code).andExpect(status().isUnprocessableContent());
        mockMvc.perform(post("/welcome")
                        .param("code", code)
                        .param("password", "nine herons on the quay")
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
        assertThat(jdbc.sql("select enabled from login_account where username = :name")
                        .param("name", username)
                        .query(Boolean.class)
                        .single())
                .isFalse();
        assertThat(takeUp(code()).andReturn().getResponse().getContentAsString())
                .contains("You belong to this organisation already");
    }

    @Test
    void fiveMinutesAfterLogInNothingIsJoined() throws Exception {
        String code = code();
        int status = clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> {
            try {
                return takeUp(code).andReturn().getResponse().getStatus();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        assertThat(status).isEqualTo(403);
        assertThat(answer(CHANGE)).isEqualTo(404);
    }

    @Test
    void aLogInSeveralPeopleUseJoinsNothing() throws Exception {
        SignedIn theatre = first.joinShared("Theatre 2", Role.SUPERVISOR);
        browser = new ProviderBrowser(mockMvc);
        browser.password(theatre);
        assertThat(takeUp(code()).andReturn().getResponse().getContentAsString())
                .contains("A log-in that several people use");
    }

    /** The database itself keeps whom an account belongs to, once somebody came in with it. */
    @Test
    void anAccountSomebodyCameInWithKeepsItsPerson() {
        assertThatThrownBy(() -> first.in(() -> transaction.execute(
                        status -> jdbc.sql("update person set account_id = :other where account_id = :own")
                                .param("other", ward.accountId())
                                .param("own", director.accountId())
                                .update())))
                .rootCause()
                .hasMessageContaining("keeps its person");
    }
}
