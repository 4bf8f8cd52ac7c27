package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.People;
import org.scrubline.platform.AccountMail;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.AuthenticatorApp;
import org.scrubline.platform.factor.SecondFactors;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.platform.jobs.QueuedJob;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;

/** The way back in for whoever forgot the password, with real mail. */
@DoorsTest
class NewPasswordTests {

    private static final String FRESH = "nine herons on the quay";
    private static final String USED_UP = "This code is not known, was used already or has run out";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    AccountMail mail;

    @Autowired
    JobsNow jobs;

    @Autowired
    SecondFactors factors;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    SignedIn owner;
    String address;
    String place;
    ProviderBrowser browser;

    @BeforeEach
    void join() throws Exception {
        organisation = organisations.open();
        owner = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        address = "a" + UUID.randomUUID().toString().substring(0, 8) + "@hospital.example";
        place = "2001:db8::" + UUID.randomUUID().toString().substring(0, 4);
        browser = new ProviderBrowser(mockMvc);
        browser.password(owner).andExpect(redirectedUrl("/"));
        putOnFile(address);
    }

    /** A code is asked for in every organisation of the database that all tests share. */
    @AfterEach
    void takeOffTheQueue() {
        jdbc.sql("delete from scheduled_tasks where task_name = 'account-mail'").update();
    }

    private void putOnFile(String to) throws Exception {
        browser.send(post("/account/address").param("address", to)).andExpect(redirectedUrl("/account/address"));
        deliver();
        browser.send(post("/account/address/confirm").param("code", newest(to)))
                .andExpect(redirectedUrl("/account/address"));
        assertThat(browser.page("/account/address")).contains("On file: " + to);
    }

    private void deliver() {
        jobs.runWaiting(organisation.tenant(), (QueuedJob) mail);
    }

    private static String newest(String to) {
        List<String> mails = RunningMailServer.to(to);
        return RunningMailServer.code(mails.get(mails.size() - 1));
    }

    private MockHttpServletResponse ask(String typed) throws Exception {
        return mockMvc.perform(
                        post("/login/help").param("name", typed).with(csrf()).with(request -> {
                            request.setRemoteAddr(place);
                            return request;
                        }))
                .andReturn()
                .getResponse();
    }

    private String codeFor(String typed) throws Exception {
        ask(typed);
        deliver();
        return newest(address);
    }

    private ResultActions choose(String code, String password) throws Exception {
        return mockMvc.perform(post("/login/new-password")
                .param("code", code)
                .param("password", password)
                .with(csrf()));
    }

    private ResultActions logIn(String password) throws Exception {
        return new ProviderBrowser(mockMvc)
                .send(post("/login").param("username", owner.username()).param("password", password));
    }

    @Test
    void aCodeByMailOpensOnceAndEndsEverySession() throws Exception {
        String code = codeFor(owner.username());
        String sent = RunningMailServer.to(address).get(1);
        assertThat(sent)
                .contains("http://localhost:8080/login/new-password#" + code)
                .contains(owner.username())
                .doesNotContain("Verrin");
        mockMvc.perform(get("/login/new-password")).andExpect(status().isOk());
        assertThat(browser.isIn(owner)).as("reading the page changes nothing").isTrue();

        choose(code, FRESH).andExpect(redirectedUrl("/login?ready"));
        assertThat(browser.isIn(owner)).isFalse();
        logIn(TestOrganisations.PASSWORD).andExpect(redirectedUrl("/login?error"));
        logIn(FRESH).andExpect(redirectedUrl("/"));
        assertThat(refusal(choose(code, FRESH))).contains(USED_UP);
        deliver();
        assertThat(RunningMailServer.to(address).get(2)).contains("A new password was chosen");
        assertThat(written()).containsExactly("password-code-sent", "password-renewed");
    }

    @Test
    void theAddressOnFileServesInPlaceOfTheName() throws Exception {
        choose(codeFor("  " + address.toUpperCase(Locale.ROOT)), FRESH).andExpect(redirectedUrl("/login?ready"));
    }

    @Test
    void theAnswerIsTheSameForANameNobodyHas() throws Exception {
        MockHttpServletResponse known = ask(owner.username());
        MockHttpServletResponse unknown = ask("nobody-" + UUID.randomUUID());
        assertThat(unknown.getStatus()).isEqualTo(known.getStatus()).isEqualTo(302);
        assertThat(unknown.getRedirectedUrl())
                .isEqualTo(known.getRedirectedUrl())
                .isEqualTo("/login/new-password?asked");
        assertThat(unknown.getHeaderNames()).containsExactlyInAnyOrderElementsOf(known.getHeaderNames());
        assertThat(unknown.getContentAsString()).isEqualTo(known.getContentAsString());
        assertThat(jobs.waiting(organisation.tenant(), (QueuedJob) mail))
                .as("both leave the same work behind")
                .hasSize(2);
    }

    @Test
    void aCodeIsOverAfterAQuarterOfAnHour() throws Exception {
        String code = codeFor(owner.username());
        assertThat(later(Duration.ofMinutes(16), code)).isEqualTo(422);
        assertThat(later(Duration.ofMinutes(14), code)).isEqualTo(302);
    }

    private int later(Duration time, String code) {
        return clock.at(clock.instant().plus(time), () -> {
            try {
                return choose(code, FRESH).andReturn().getResponse().getStatus();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    @Test
    void aPasswordThatCannotBeTakenDoesNotUseTheCodeUp() throws Exception {
        String code = codeFor(owner.username());
        assertThat(refusal(choose(code, "short"))).contains("A password has 12 to 200 characters");
        assertThat(refusal(choose(code, "ansel verrin!"))).contains("mostly a name");
        choose(code, FRESH).andExpect(redirectedUrl("/login?ready"));
    }

    @Test
    void ofTwentyThreadsWithOneCodeOneChooses() throws Exception {
        String code = codeFor(owner.username());
        CountDownLatch start = new CountDownLatch(1);
        ExecutorService threads = Executors.newFixedThreadPool(20);
        List<Future<Integer>> answers = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            answers.add(threads.submit(() -> {
                start.await();
                return choose(code, FRESH).andReturn().getResponse().getStatus();
            }));
        }
        start.countDown();
        List<Integer> seen = new ArrayList<>();
        for (Future<Integer> answer : answers) {
            seen.add(answer.get());
        }
        threads.shutdownNow();
        assertThat(seen)
                .containsOnlyOnce(302)
                .filteredOn(status -> status == 422)
                .hasSize(19);
    }

    @Test
    void nobodyGetsACodeWithoutAConfirmedAddressOrAPasswordOfTheirOwn() throws Exception {
        SignedIn without = organisation.join("Ottilie Brannock", Role.TRAINEE);
        SignedIn shared = organisation.joinShared("Theatre 2", Role.SUPERVISOR);
        organisation.in(() -> transaction.execute(
                status -> jdbc.sql("insert into login_address (account_id, confirmed, address, set_at)"
                                + " values (:shared, true, 'theatre@hospital.example', now()),"
                                + " (:without, false, 'waiting@hospital.example', now())")
                        .param("shared", shared.accountId())
                        .param("without", without.accountId())
                        .update()));
        ask(without.username());
        ask(shared.username());
        ask("waiting@hospital.example");
        organisation.in(() -> {
            people.setActive(owner.personId(), false);
            return true;
        });
        ask(owner.username());
        deliver();
        assertThat(RunningMailServer.to(address)).hasSize(1);
        assertThat(RunningMailServer.to("theatre@hospital.example")).isEmpty();
        assertThat(RunningMailServer.to("waiting@hospital.example")).isEmpty();
    }

    @Test
    void whoAsksAgainAndAgainHasToWaitWhetherOrNotTheNameExists() throws Exception {
        for (String name : List.of(owner.username(), "nobody-" + UUID.randomUUID())) {
            for (int i = 0; i < 5; i++) {
                assertThat(ask(name).getStatus()).isEqualTo(302);
            }
            MockHttpServletResponse slowed = ask(name);
            assertThat(slowed.getStatus()).isEqualTo(429);
            assertThat(slowed.getHeader("Retry-After")).asInt().isBetween(1, 721);
        }
        assertThat(ask(address).getStatus()).as("another one").isEqualTo(302);
    }

    @Test
    void aMailboxGetsAtMostThreeCodesAnHour() throws Exception {
        for (int i = 0; i < 5; i++) {
            codeFor(owner.username());
        }
        assertThat(RunningMailServer.to(address)).hasSize(1 + 3);
    }

    @Test
    void theSecondFactorIsStillAskedFor() throws Exception {
        String sealed = factors.newSecret(owner.accountId());
        AuthenticatorApp app =
                new AuthenticatorApp(factors.offer(owner, sealed).orElseThrow().secret());
        organisation.in(
                () -> factors.add(owner, sealed, app.code(clock.instant())).orThrow());
        choose(codeFor(owner.username()), FRESH).andExpect(redirectedUrl("/login?ready"));
        ProviderBrowser fresh = new ProviderBrowser(mockMvc);
        fresh.send(post("/login").param("username", owner.username()).param("password", FRESH));
        assertThat(fresh.isIn(owner)).isFalse();
        fresh.send(get("/account/keys").accept("text/html")).andExpect(redirectedUrl("/login/code"));
    }

    @Test
    void aNewPasswordOrAnotherAddressEndsTheCodesThatAreOut() throws Exception {
        String code = codeFor(owner.username());
        browser.send(post("/account/password")
                        .param("current", TestOrganisations.PASSWORD)
                        .param("password", "eleven larks at dawn"))
                .andExpect(redirectedUrl("/account/sessions"));
        assertThat(refusal(choose(code, FRESH))).contains(USED_UP);

        String second = codeFor(owner.username());
        browser.send(post("/account/address/remove")).andExpect(redirectedUrl("/account/address"));
        assertThat(refusal(choose(second, FRESH))).contains(USED_UP);
        assertThat(browser.page("/account/address")).contains("No address is on file");
    }

    @Test
    void theTablesAndTheAuditTrailHoldNoCode() throws Exception {
        String code = codeFor(owner.username());
        List<String> rows = organisation.in(() ->
                transaction.execute(status -> jdbc.sql("select l::text from login_link l where account_id = :account"
                                + " union all select e::text from audit_entry e"
                                + " union all select t.task_instance from scheduled_tasks t")
                        .param("account", owner.accountId())
                        .query(String.class)
                        .list()));
        assertThat(rows).isNotEmpty();
        assertThat(rows)
                .allSatisfy(row -> assertThat(row)
                        .doesNotContain(code)
                        .doesNotContain(code.replace("-", ""))
                        .doesNotContain(address));
    }

    @Test
    void aNewAddressWaitsForItsCodeAndTheOldOneIsTold() throws Exception {
        String next = "b" + address;
        browser.send(post("/account/address").param("address", next));
        deliver();
        assertThat(RunningMailServer.to(address).get(1)).contains("A new address was entered");
        browser.send(post("/account/address/confirm").param("code", "ABCDE-FGHJK-LMNPQ-RSTUV"))
                .andExpect(status().isUnprocessableContent());
        assertThat(browser.page("/account/address")).contains("On file: " + address, next);
        browser.send(post("/account/address/confirm").param("code", newest(next)));
        assertThat(browser.page("/account/address")).contains("On file: " + next);
    }

    @Test
    void fiveMinutesAfterLogInNoAddressIsChanged() throws Exception {
        int status = clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> {
            try {
                return browser.send(post("/account/address").param("address", "b" + address))
                        .andReturn()
                        .getResponse()
                        .getStatus();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        assertThat(status).isEqualTo(403);
        assertThat(browser.page("/account/address")).doesNotContain("b" + address);
    }

    @Test
    void whatIsNoAddressIsRefused() throws Exception {
        for (String wrong :
                List.of("", "ward", "a@b, c@d", "Ward <ward@hospital.example>", "ward@hospital.example\r\nBcc: x@y")) {
            browser.send(post("/account/address").param("address", wrong)).andExpect(status().isUnprocessableContent());
        }
    }

    @Test
    void aLogInSeveralPeopleUseTakesNoAddress() throws Exception {
        SignedIn shared = organisation.joinShared("Theatre 2", Role.SUPERVISOR);
        ProviderBrowser theatre = new ProviderBrowser(mockMvc);
        theatre.password(shared);
        assertThat(refusal(theatre.send(post("/account/address").param("address", "b" + address))))
                .contains("Several people use this log-in");
    }

    private static String refusal(ResultActions answer) throws Exception {
        return answer.andExpect(status().isUnprocessableContent())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private List<String> written() {
        return organisation.in(() -> transaction.execute(
                status -> jdbc.sql("select action from audit_entry where action like 'password%' order by sequence")
                        .query(String.class)
                        .list()));
    }
}
