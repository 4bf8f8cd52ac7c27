package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.AuthenticatorApp;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;

/** Log-ins with two pages, as a browser without script would walk them. */
@ScrublineTest
class SecondFactorPagesTests {

    private static final String PAGE = "/account/second-factor";
    private static final Pattern SECRET = Pattern.compile("<b class=\"number\">([A-Z2-7 ]{39})</b>");
    private static final Pattern RECOVERY = Pattern.compile("[A-Z2-9]{5}(?:-[A-Z2-9]{5}){4}");
    private static final Pattern CHALLENGE = Pattern.compile("data-challenge=\"([\\w-]{43})\"");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Settings settings;

    @Autowired
    Passkeys passkeys;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn supervisor;
    Instant now;

    @Nullable
    Cookie session;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        now = clock.instant();
    }

    @Test
    void whoHasAnAppLogsInOnTwoPagesAndIsNobodyInBetween() throws Exception {
        AuthenticatorApp app = setUp();
        session = null;
        password().andExpect(redirectedUrl("/"));
        Cookie afterPassword = session;

        for (String path : List.of("/", "/my-cases", "/signed", PAGE, "/account/keys", "/no-such-page")) {
            send(get(path)).andExpect(redirectedUrl("/login/code"));
        }
        assertThat(body(get("/login/code"))).contains("One more step").doesNotContain("Ansel Verrin");
        assertThat(body(get("/rubric-no"))).doesNotContain("Ansel Verrin");
        assertThat(written("logged-in")).as("half a log-in is none").hasSize(1);

        later(30, () -> send(post("/login/code").param("code", app.code(now))));
        assertThat(session).isNotNull();
        assertThat(session.getValue()).isNotEqualTo(afterPassword == null ? "" : afterPassword.getValue());
        assertThat(body(get("/account/keys"))).contains("Ansel Verrin");
        assertThat(written("logged-in")).hasSize(2);
    }

    @Test
    void theCodeLeadsOnToThePageThatWasAskedFor() throws Exception {
        AuthenticatorApp app = setUp();
        session = null;
        send(get("/signed").accept("text/html")).andExpect(status().is3xxRedirection());
        password();
        send(get("/signed").accept("text/html")).andExpect(redirectedUrl("/login/code"));
        later(
                30,
                () -> send(post("/login/code").param("code", app.code(now)))
                        .andExpect(redirectedUrl("http://localhost/signed?continue")));
    }

    @Test
    void aWrongOrUsedCodeDoesNotLogIn() throws Exception {
        AuthenticatorApp app = setUp();
        session = null;
        password();
        send(post("/login/code").param("code", app.code(now))).andExpect(redirectedUrl("/login/code?wrong"));
        send(post("/login/code")).andExpect(redirectedUrl("/login/code?wrong"));
        assertThat(body(get("/login/code").param("wrong", ""))).contains("This code is not right");
        send(get("/account/keys")).andExpect(redirectedUrl("/login/code"));
    }

    @Test
    void guessingCodesHasToWaitAndARightPasswordGivesNoNewGuesses() throws Exception {
        AuthenticatorApp app = setUp();
        session = null;
        for (int i = 0; i < 5; i++) {
            password();
            send(post("/login/code").param("code", "00000" + i)).andExpect(redirectedUrl("/login/code?wrong"));
        }
        password();
        later(
                5,
                () -> send(post("/login/code").param("code", app.code(now)))
                        .andExpect(redirectedUrl("/login/code?wait")));
        assertThat(body(get("/login/code").param("wait", ""))).contains("Too many wrong codes");
        assertThat(written("wrong-codes")).hasSize(1);
    }

    @Test
    void aCodeWithoutAPasswordBeforeItLeadsToTheLogIn() throws Exception {
        send(post("/login/code").param("code", "123456")).andExpect(redirectedUrl("/login"));
        send(get("/login/code")).andExpect(redirectedUrl("/"));
    }

    @Test
    void aRecoveryCodeOpensInPlaceOfTheApp() throws Exception {
        List<String> codes = codes(add(secret()));
        session = null;
        password();
        send(post("/login/code").param("code", codes.get(0))).andExpect(redirectedUrl("/"));
        assertThat(body(get(PAGE))).contains("Ansel Verrin").contains(">9</dd>");
        assertThat(written("recovery-code-used")).hasSize(1);
    }

    @Test
    void aPasskeyCountsAsTwoFactors() throws Exception {
        setUp();
        SoftwarePasskey passkey = SoftwarePasskey.of(supervisor.accountId(), passkeys);
        session = null;
        String challenge = found(CHALLENGE, body(get("/login")));
        send(post("/login/passkey").param("assertion", passkey.answer(challenge)))
                .andExpect(redirectedUrl("/"));
        assertThat(body(get("/account/keys"))).contains("Ansel Verrin");

        session = null;
        password();
        challenge = found(CHALLENGE, body(get("/login/code")));
        send(post("/login/passkey").param("assertion", passkey.answer(challenge)));
        assertThat(body(get("/account/keys"))).contains("Ansel Verrin");
        assertThat(written("logged-in")).as("each with its entry").hasSize(3);
    }

    @Test
    void settingUpEndsTheOtherSessionsAndNeedsTheRightFirstCode() throws Exception {
        password();
        Cookie other = session;
        session = null;
        password();
        String secret = secret();
        String wrong = body(post(PAGE).param("code", "000000"));
        assertThat(wrong).contains("This is not the code the app shows").contains(secret);
        assertThat(codes(add(secret))).hasSize(10);
        assertThat(body(get(PAGE))).contains("Your authenticator app").doesNotContain(secret);

        session = other;
        send(get("/account/keys")).andExpect(redirectedUrl("/login"));
    }

    @Test
    void fiveMinutesAfterLogInTheSecretIsNotShownUntilItIsClearWhoAsks() throws Exception {
        password();
        later(360, () -> {
            assertThat(body(get(PAGE))).contains("First show that it is you").doesNotContainPattern(SECRET);
            send(post(PAGE).param("code", "123456")).andExpect(status().isForbidden());
            send(post(PAGE + "/confirm").param("password", "not the password"))
                    .andExpect(status().isUnprocessableContent());
            send(post(PAGE + "/confirm").param("password", TestOrganisations.PASSWORD))
                    .andExpect(redirectedUrl(PAGE));
            return send(get(PAGE)).andExpect(status().isOk());
        });
        assertThat(body(get(PAGE))).containsPattern(SECRET);
    }

    @Test
    void theAppIsRemovedAndTheCodesAreMadeAnewAgainstACode() throws Exception {
        List<String> codes = codes(add(secret()));
        send(post(PAGE + "/recovery").param("code", "nothing")).andExpect(status().isUnprocessableContent());
        List<String> fresh = codes(body(post(PAGE + "/recovery").param("code", codes.get(0))));
        send(post(PAGE + "/remove").param("code", codes.get(1))).andExpect(status().isUnprocessableContent());
        send(post(PAGE + "/remove").param("code", fresh.get(1))).andExpect(redirectedUrl(PAGE));
        assertThat(written("code-app-removed")).hasSize(1);
        session = null;
        password();
        assertThat(body(get("/account/keys"))).contains("Ansel Verrin");
    }

    @Test
    void whoMustHaveASecondFactorIsLedToItAndSeesNothingElse() throws Exception {
        password();
        assertThat(body(get("/account/keys"))).contains("Ansel Verrin");
        require(Role.SUPERVISOR);
        for (String path : List.of("/", "/to-score", "/signed", "/no-such-page")) {
            send(get(path)).andExpect(redirectedUrl(PAGE));
        }
        assertThat(body(get(PAGE))).contains("One of your roles asks for a second factor");
        send(get("/account/keys")).andExpect(status().isOk());
        add(secret());
        send(get("/to-score")).andExpect(status().isOk());
    }

    @Test
    void theRuleIsForItsRoleAlone() throws Exception {
        require(Role.TRAINEE);
        password();
        send(get("/to-score")).andExpect(status().isOk());
    }

    @Test
    void aPasswordAloneAddsNoFactorBesideAPasskeyThatIsRequired() throws Exception {
        SoftwarePasskey passkey = SoftwarePasskey.of(supervisor.accountId(), passkeys);
        require(Role.SUPERVISOR);
        password();
        send(get(PAGE)).andExpect(redirectedUrl("/login/code"));
        send(post(PAGE).param("code", "123456")).andExpect(redirectedUrl("/login/code"));
        String page = body(get("/login/code"));
        assertThat(page).contains("yours is a passkey").doesNotContain("name=\"code\"");
        send(post("/login/passkey").param("assertion", passkey.answer(found(CHALLENGE, page))));
        send(get("/to-score")).andExpect(status().isOk());
    }

    private void require(Role role) {
        SignedIn director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        organisation.in(() -> settings.change(
                        director,
                        organisation.programme().id(),
                        SettingKey.secondFactor(role),
                        "1",
                        "Agreed with the hospital.")
                .orThrow());
    }

    private AuthenticatorApp setUp() throws Exception {
        String secret = secret();
        add(secret);
        return new AuthenticatorApp(secret);
    }

    /** Logs in where nobody is, and reads the secret from the page. */
    private String secret() throws Exception {
        if (session == null) {
            password();
        }
        return found(SECRET, body(get(PAGE)));
    }

    private String add(String secret) throws Exception {
        return body(post(PAGE).param("code", new AuthenticatorApp(secret).code(clock.instant())));
    }

    private static List<String> codes(String page) {
        return RECOVERY.matcher(page).results().map(one -> one.group()).toList();
    }

    private ResultActions password() throws Exception {
        return send(
                post("/login").param("username", supervisor.username()).param("password", TestOrganisations.PASSWORD));
    }

    private static String found(Pattern pattern, String page) {
        Matcher matcher = pattern.matcher(page);
        assertThat(matcher.find()).as("%s in %s", pattern, page).isTrue();
        return matcher.group(1);
    }

    private String body(MockHttpServletRequestBuilder request) throws Exception {
        return send(request).andReturn().getResponse().getContentAsString();
    }

    private interface Work {
        ResultActions run() throws Exception;
    }

    /** With the clock moved on; {@link #now} moves along. */
    private void later(long seconds, Work work) {
        now = clock.instant().plus(Duration.ofSeconds(seconds));
        clock.at(now, () -> {
            try {
                return work.run();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private List<String> written(String action) {
        return organisation.in(() -> transaction.execute(
                status -> jdbc.sql("select action from audit_entry where action = :action order by sequence")
                        .param("action", action)
                        .query(String.class)
                        .list()));
    }

    private ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
        if (session != null) {
            request.cookie(session);
        }
        ResultActions answer = mockMvc.perform(request.with(csrf()).with(sent -> {
            // An address of its own: refusals are counted by address over all tests.
            sent.setRemoteAddr("198.51.100.31");
            return sent;
        }));
        for (Cookie cookie : answer.andReturn().getResponse().getCookies()) {
            session = cookie;
        }
        return answer;
    }
}
