package org.scrubline.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.LostFactors;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.AuthenticatorApp;
import org.scrubline.platform.factor.SecondFactors;
import org.scrubline.support.LogIn;
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

@ScrublineTest
class LostFactorPagesTests {

    private static final String PAGE = "/people/lost-factors";
    private static final String REASON = "Came to the office with the staff card.";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SecondFactors factors;

    @Autowired
    Passkeys passkeys;

    @Autowired
    LostFactors lost;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    SignedIn first;
    SignedIn second;
    SignedIn owner;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        first = organisation.join("Ilse Brandt", Role.ADMINISTRATOR);
        second = organisation.join("Corin Hale", Role.ADMINISTRATOR);
        owner = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        addApp(owner);
        SoftwarePasskey.of(owner.accountId(), passkeys);
    }

    private void addApp(SignedIn who) {
        String secret = factors.newSecret(who.accountId());
        AuthenticatorApp app =
                new AuthenticatorApp(factors.offer(who, secret).orElseThrow().secret());
        organisation.in(
                () -> factors.add(who, secret, app.code(clock.instant())).orThrow());
    }

    private ResultActions send(SignedIn who, MockHttpServletRequestBuilder request) throws Exception {
        return mockMvc.perform(request.with(LogIn.as(who)).with(csrf()));
    }

    private ResultActions ask(SignedIn who, SignedIn about, String reason) throws Exception {
        return send(who, post(PAGE).param("person", about.personId().toString()).param("reason", reason));
    }

    private UUID asked() throws Exception {
        ask(first, owner, REASON).andExpect(redirectedUrl(PAGE));
        return organisation.in(() -> lost.waiting(first)).get(0).id();
    }

    private List<String> written() {
        return organisation.in(() -> transaction.execute(status -> jdbc.sql(
                        "select action from audit_entry where about_id = :who and action like 'factor-%' order by sequence")
                .param("who", owner.personId())
                .query(String.class)
                .list()));
    }

    private boolean has() {
        return factors.app(owner.accountId()).isPresent()
                && factors.recoveryCodesLeft(owner.accountId()) == 10
                && !passkeys.of(owner.accountId()).isEmpty();
    }

    private boolean hasNone() {
        return factors.app(owner.accountId()).isEmpty()
                && factors.recoveryCodesLeft(owner.accountId()) == 0
                && passkeys.of(owner.accountId()).isEmpty();
    }

    @Test
    void oneAsksAnotherConfirmsAndTheOwnerIsTold() throws Exception {
        UUID id = asked();
        assertThat(has()).isTrue();
        send(second, get(PAGE)).andExpect(content().string(containsString(REASON)));
        send(second, post(PAGE + "/" + id + "/confirm")).andExpect(redirectedUrl(PAGE));
        assertThat(hasNone()).isTrue();
        send(owner, get("/account/second-factor"))
                .andExpect(content().string(containsString("two administrators took your second factor away")));
        assertThat(written()).containsExactly("factor-clearing-asked", "factor-cleared");
        send(second, post(PAGE + "/" + id + "/confirm")).andExpect(status().isNotFound());
    }

    @Test
    void everySessionOfTheOwnerEnds() throws Exception {
        mockMvc.perform(post("/login")
                .param("username", owner.username())
                .param("password", TestOrganisations.PASSWORD)
                .with(csrf())
                .with(request -> {
                    request.setRemoteAddr("198.51.100.37");
                    return request;
                }));
        assertThat(sessions()).isOne();
        UUID id = asked();
        send(second, post(PAGE + "/" + id + "/confirm"));
        assertThat(sessions()).isZero();
    }

    private int sessions() {
        return jdbc.sql("select count(*) from spring_session where principal_name = :name")
                .param("name", owner.username())
                .query(Integer.class)
                .single();
    }

    @Test
    void whoAskedDoesNotConfirm() throws Exception {
        UUID id = asked();
        send(first, post(PAGE + "/" + id + "/confirm")).andExpect(status().isUnprocessableContent());
        assertThat(has()).isTrue();
        assertThat(written()).containsExactly("factor-clearing-asked");
    }

    @Test
    void nobodyAsksOrConfirmsAboutThemselves() throws Exception {
        SoftwarePasskey.of(first.accountId(), passkeys);
        ask(first, first, REASON).andExpect(status().isUnprocessableContent());
        ask(second, first, REASON).andExpect(redirectedUrl(PAGE));
        UUID id = organisation.in(() -> lost.waiting(second)).get(0).id();
        send(first, post(PAGE + "/" + id + "/confirm")).andExpect(status().isNotFound());
        send(first, post(PAGE + "/" + id + "/drop")).andExpect(status().isNotFound());
        assertThat(passkeys.of(first.accountId())).hasSize(1);
    }

    @Test
    void aReasonIsNeededAndOneRequestIsEnough() throws Exception {
        for (String reason : List.of("", "   ", "x".repeat(301))) {
            ask(first, owner, reason).andExpect(status().isUnprocessableContent());
        }
        asked();
        ask(second, owner, REASON).andExpect(status().isUnprocessableContent());
    }

    @Test
    void aRequestThatIsDroppedOrADayOldIsOver() throws Exception {
        UUID id = asked();
        send(second, post(PAGE + "/" + id + "/drop")).andExpect(redirectedUrl(PAGE));
        send(second, post(PAGE + "/" + id + "/confirm")).andExpect(status().isNotFound());
        asked();
        Instant later = clock.instant().plus(Duration.ofDays(1)).plusSeconds(1);
        clock.at(later, () -> {
            assertThat(organisation.in(() -> lost.waiting(second))).isEmpty();
            return organisation.in(
                    () -> lost.ask(second, owner.personId(), REASON).orThrow());
        });
        assertThat(has()).isTrue();
    }

    @Test
    void fiveMinutesAfterTheLogInNothingIsAskedOrConfirmed() throws Exception {
        UUID id = asked();
        clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> {
            try {
                ask(second, owner, REASON).andExpect(status().isUnprocessableContent());
                return send(second, post(PAGE + "/" + id + "/confirm")).andExpect(status().isUnprocessableContent());
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        assertThat(has()).isTrue();
    }

    @Test
    void administratorsOfAnotherProgrammeOrOrganisationSeeNothing() throws Exception {
        UUID id = asked();
        for (TestOrganisation other : List.of(organisation.anotherProgramme(), organisations.open())) {
            SignedIn stranger = other.join("Abroad Administrator", Role.ADMINISTRATOR);
            send(stranger, get(PAGE)).andExpect(content().string(not(containsString("Ansel Verrin"))));
            ask(stranger, owner, REASON).andExpect(status().isUnprocessableContent());
            send(stranger, post(PAGE + "/" + id + "/confirm")).andExpect(status().isNotFound());
        }
        assertThat(has()).isTrue();
    }
}
