package org.scrubline.doors;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.People;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.Refusal;
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
import org.springframework.transaction.support.TransactionTemplate;

/** Log-ins through a provider that runs on this machine: no.nav.security:mock-oauth2-server, written by others. */
@DoorsTest
class ProviderLogInTests {

    private static final String OWN_PAGE = "/account/provider";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    Accounts accounts;

    @Autowired
    Memberships memberships;

    @Autowired
    Settings settings;

    @Autowired
    SecondFactors factors;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation orlin;
    ProviderBrowser browser;
    String subject;

    @BeforeEach
    void open() {
        orlin = organisations.at(RunningProvider.ORLIN);
        browser = new ProviderBrowser(mockMvc);
        subject = "subject-" + UUID.randomUUID();
    }

    /** Somebody whose account has no password, invited and not yet in. */
    private record Invited(SignedIn who, String code) {}

    private Invited invited() {
        return orlin.in(() -> {
            String username = "p" + UUID.randomUUID().toString().substring(0, 12);
            People.NewPerson added = people.addPerson(orlin.programme().id(), "Maren Tolvik", username, Role.SUPERVISOR)
                    .orThrow();
            SignedIn who = memberships.find(added.accountId(), orlin.tenant()).orElseThrow();
            return new Invited(who, accounts.invite(added.accountId(), InvitationLife.DAY));
        });
    }

    private SignedIn welcomed() throws Exception {
        Invited invited = invited();
        browser.send(post("/welcome/provider").param("code", invited.code()).param("with", "orlin"))
                .andExpect(redirectedUrl("/login/with/orlin"));
        browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/"));
        return invited.who();
    }

    private List<String> written(SignedIn who) {
        return orlin.in(() -> transaction.execute(status -> jdbc.sql(
                        "select action from audit_entry where actor_id = :who"
                                + " and action in ('provider-linked', 'provider-unlinked', 'logged-in') order by sequence")
                .param("who", who.personId())
                .query(String.class)
                .list()));
    }

    @Test
    void theQuestionCarriesAStateANonceAProofKeyAndTheOneAddressToComeBackTo() throws Exception {
        Map<String, String> asked = ProviderBrowser.parameters(browser.question("orlin"));
        assertThat(asked)
                .containsEntry("response_type", "code")
                .containsEntry("scope", "openid")
                .containsEntry("client_id", RunningProvider.CLIENT)
                .containsEntry("code_challenge_method", "S256")
                .containsEntry("redirect_uri", "http://localhost:8080/login/from/orlin")
                .containsKeys("state", "nonce", "code_challenge")
                .doesNotContainKey("client_secret");
        assertThat(ProviderBrowser.parameters(browser.question("orlin")).get("state"))
                .isNotEqualTo(asked.get("state"));
    }

    @Test
    void theLogInPageOffersEveryConnection() throws Exception {
        assertThat(browser.page("/login")).contains("Log in with Orlin house log-in", "/login/with/orlin");
    }

    @Test
    void whomTheProviderKnowsButNoAccountIsConnectedWithIsToldSoAndIsNobody() throws Exception {
        browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/login?provider=unknown"));
        assertThat(browser.page("/login?provider=unknown")).contains("no account here is connected");
        browser.send(get("/account/keys").accept("text/html")).andExpect(redirectedUrl("/login"));
    }

    @Test
    void anInvitationIsTakenUpWithTheProviderInsteadOfAPassword() throws Exception {
        SignedIn who = welcomed();
        assertThat(browser.isIn(who)).isTrue();
        assertThat(browser.page(OWN_PAGE)).contains("Connected since", "Your account has no password");

        ProviderBrowser later = new ProviderBrowser(mockMvc);
        later.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/"));
        assertThat(later.isIn(who)).isTrue();
        assertThat(written(who)).containsExactly("provider-linked", "logged-in", "logged-in");
    }

    @Test
    void anInvitationServesOnceAndAWrongCodeConnectsNobody() throws Exception {
        Invited invited = invited();
        for (String code : List.of("WRONG-WRONG", "", invited.code() + "A")) {
            browser.send(post("/welcome/provider").param("code", code).param("with", "orlin"));
            browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/login?provider=taken"));
        }
        browser.send(post("/welcome/provider").param("code", invited.code()).param("with", "orlin"));
        browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/"));
        ProviderBrowser other = new ProviderBrowser(mockMvc);
        other.send(post("/welcome/provider").param("code", invited.code()).param("with", "orlin"));
        other.through("orlin", subject + "-other", Map.of()).andExpect(redirectedUrl("/login?provider=taken"));
    }

    @Test
    void anInvitationOfAnotherOrganisationOpensNothingAndStaysGood() throws Exception {
        organisations.at(RunningProvider.HALDEN);
        Invited invited = invited();
        browser.send(post("/welcome/provider").param("code", invited.code()).param("with", "halden"));
        browser.through("halden", subject, Map.of()).andExpect(redirectedUrl("/login?provider=taken"));
        browser.send(post("/welcome/provider").param("code", invited.code()).param("with", "orlin"));
        browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/"));
    }

    @Test
    void theSameSubjectOfAnotherProviderIsSomebodyElse() throws Exception {
        welcomed();
        new ProviderBrowser(mockMvc)
                .through("halden", subject, Map.of())
                .andExpect(redirectedUrl("/login?provider=unknown"));
    }

    @Test
    void theSameMailAddressIsNotTheSamePerson() throws Exception {
        Invited invited = invited();
        Map<String, String> mail = Map.of("email", "maren@orlin.example", "preferred_username", "maren");
        browser.send(post("/welcome/provider").param("code", invited.code()).param("with", "orlin"));
        browser.through("orlin", subject, mail).andExpect(redirectedUrl("/"));
        new ProviderBrowser(mockMvc)
                .through("orlin", subject + "-next", mail)
                .andExpect(redirectedUrl("/login?provider=unknown"));
    }

    @Test
    void theOwnerConnectsAnAccountAndTakesTheConnectionAway() throws Exception {
        SignedIn owner = orlin.join("Ansel Verrin", Role.SUPERVISOR);
        browser.password(owner);
        browser.send(post(OWN_PAGE)).andExpect(redirectedUrl("/login/with/orlin"));
        browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl(OWN_PAGE + "?linked"));
        assertThat(browser.isIn(owner)).isTrue();

        ProviderBrowser other = new ProviderBrowser(mockMvc);
        other.through("orlin", subject, Map.of()).andExpect(redirectedUrl("/"));
        assertThat(other.isIn(owner)).isTrue();
        other.send(post(OWN_PAGE + "/remove")).andExpect(redirectedUrl(OWN_PAGE));
        new ProviderBrowser(mockMvc)
                .through("orlin", subject, Map.of())
                .andExpect(redirectedUrl("/login?provider=unknown"));
        assertThat(written(owner)).contains("provider-linked", "provider-unlinked");
    }

    @Test
    void whoIsLoggedInButDidNotAskForItIsNotConnected() throws Exception {
        SignedIn owner = orlin.join("Ansel Verrin", Role.SUPERVISOR);
        browser.password(owner);
        browser.through("orlin", subject, Map.of()).andExpect(redirectedUrl(OWN_PAGE + "?provider=unknown"));
        assertThat(browser.page(OWN_PAGE)).contains("Not connected.");
    }

    @Test
    void fiveMinutesAfterTheLogInNothingIsConnectedOrTakenAway() throws Exception {
        SignedIn owner = orlin.join("Ansel Verrin", Role.SUPERVISOR);
        browser.password(owner);
        clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> {
            try {
                browser.send(post(OWN_PAGE)).andExpect(status().isForbidden());
                return browser.send(post(OWN_PAGE + "/remove")).andExpect(status().isForbidden());
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    @Test
    void theOnlyWayInIsNotTakenAway() throws Exception {
        SignedIn who = welcomed();
        browser.send(post(OWN_PAGE + "/remove")).andExpect(status().isUnprocessableContent());
        assertThat(browser.page(OWN_PAGE)).contains("Connected since");
        assertThat(written(who)).doesNotContain("provider-unlinked");
    }

    @Test
    void aClosedAccountStaysClosed() throws Exception {
        SignedIn who = welcomed();
        orlin.in(() -> transaction.execute(status -> jdbc.sql("update login_account set enabled = false where id = :id")
                .param("id", who.accountId())
                .update()));
        new ProviderBrowser(mockMvc)
                .through("orlin", subject, Map.of())
                .andExpect(redirectedUrl("/login?provider=unknown"));
    }

    @Test
    void whoHasNoPasswordIsToldThatAPasskeySigns() throws Exception {
        SignedIn who = welcomed();
        assertThat(accounts.confirmPassword(who.accountId(), "anything at all"))
                .isEqualTo(Attempt.refused(Refusal.at("password", "refusal.password.none")));
    }

    @Test
    void theProvidersWordCountsAsASecondFactorOnlyWhereTheSettingSaysSo() throws Exception {
        SignedIn who = welcomed();
        SignedIn director = orlin.join("Ilse Brandt", Role.DIRECTOR);
        orlin.in(() -> settings.change(
                        director,
                        orlin.programme().id(),
                        SettingKey.secondFactor(Role.SUPERVISOR),
                        "1",
                        "Agreed with the hospital.")
                .orThrow());
        for (Map<String, ?> claims : List.of(
                Map.<String, Object>of("amr", List.of("pwd")),
                Map.of("acr", "two factors, believe me"),
                Map.<String, Object>of())) {
            ProviderBrowser one = new ProviderBrowser(mockMvc);
            one.through("orlin", subject, claims);
            one.send(get("/to-score")).andExpect(redirectedUrl("/account/second-factor"));
        }
        for (Map<String, ?> claims :
                List.of(Map.<String, Object>of("amr", List.of("pwd", "mfa")), Map.of("acr", "urn:halden:two"))) {
            ProviderBrowser one = new ProviderBrowser(mockMvc);
            one.through("orlin", subject, claims);
            one.send(get("/to-score")).andExpect(status().isOk());
            assertThat(one.isIn(who)).isTrue();
        }
    }

    @Test
    void whoHasAnAppShowsItsCodeAfterTheProvider() throws Exception {
        SignedIn who = welcomed();
        String secret = factors.newSecret(who.accountId());
        AuthenticatorApp app =
                new AuthenticatorApp(factors.offer(who, secret).orElseThrow().secret());
        String code = orlin.in(() ->
                factors.add(who, secret, app.code(clock.instant())).orThrow().get(0));
        ProviderBrowser one = new ProviderBrowser(mockMvc);
        one.through("orlin", subject, Map.of());
        one.send(get("/to-score")).andExpect(redirectedUrl("/login/code"));
        one.send(post("/login/code").param("code", code))
                .andExpect(redirectedUrl("http://localhost/to-score?continue"));
        assertThat(one.isIn(who)).isTrue();
    }

    @Test
    void anAnswerToAnotherQuestionOrASecondTimeLeadsToNobody() throws Exception {
        SignedIn who = welcomed();
        ProviderBrowser one = new ProviderBrowser(mockMvc);
        URI answer = one.vouched(one.question("orlin"), subject, Map.of());
        new ProviderBrowser(mockMvc).back(answer).andExpect(redirectedUrl("/login?provider=refused"));
        one.back(answer).andExpect(redirectedUrl("/"));
        assertThat(one.isIn(who)).isTrue();
        one.back(answer).andExpect(redirectedUrl(OWN_PAGE + "?provider=refused"));
    }

    @Test
    void anAnswerOfOneProviderIsNotTakenForAnothers() throws Exception {
        welcomed();
        ProviderBrowser one = new ProviderBrowser(mockMvc);
        URI answer = one.vouched(one.question("orlin"), subject, Map.of());
        one.back(URI.create(answer.toString().replace("/from/orlin", "/from/halden")))
                .andExpect(redirectedUrl("/login?provider=refused"));
    }

    @Test
    void aNoOfTheProviderAndAnAnswerWithoutACodeAreSaidKindly() throws Exception {
        for (String said : List.of("error=access_denied", "code=", "nonsense=1", "code=not-one-of-its-codes")) {
            String state = ProviderBrowser.parameters(browser.question("orlin")).get("state");
            browser.send(get(URI.create("/login/from/orlin?" + said + "&state=" + state)))
                    .andExpect(redirectedUrl("/login?provider=refused"));
        }
        assertThat(browser.page("/login?provider=refused")).contains("Nothing was changed. Begin again.");
    }

    @Test
    void aProviderThatDoesNotAnswerIsSaidKindly() throws Exception {
        browser.send(get("/login/with/silent")).andExpect(redirectedUrl("/login?provider=unreachable"));
        assertThat(browser.page("/login?provider=unreachable")).contains("does not answer now");
    }

    @Test
    void wordsInTheAddressAreNotRepeatedOnThePage() throws Exception {
        assertThat(browser.page("/login?provider=ring+this+number")).doesNotContain("ring", "platform.provider.said");
    }

    @Test
    void nothingOfTheProviderStaysWithTheSession() throws Exception {
        SignedIn who = welcomed();
        List<byte[]> kept = jdbc.sql(
                        "select attribute_bytes from spring_session_attributes a"
                                + " join spring_session s on s.primary_id = a.session_primary_id where s.principal_name = :name")
                .param("name", who.username())
                .query(byte[].class)
                .list();
        assertThat(kept).isNotEmpty();
        assertThat(kept)
                .allSatisfy(bytes -> assertThat(new String(bytes, StandardCharsets.ISO_8859_1))
                        .doesNotContain("eyJ", subject, "a secret of the connection"));
    }
}
