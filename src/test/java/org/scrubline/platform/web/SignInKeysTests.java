package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Passkeys.Passkey;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.session.FindByIndexNameSessionRepository;
import org.springframework.session.Session;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class SignInKeysTests {

    private static final String KEYS = "/account/keys";
    private static final Pattern CHALLENGE = Pattern.compile("data-challenge=\"([\\w-]{43})\"");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Passkeys passkeys;

    @Autowired
    FindByIndexNameSessionRepository<? extends Session> sessions;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn supervisor;

    @Nullable
    Cookie session;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
    }

    @Test
    void withoutAKeyThePageSaysWhatOneIsFor() throws Exception {
        send(get(KEYS))
                .andExpect(status().isOk())
                .andExpect(content().string(allOf(containsString("No key yet"), containsString("Add a key"))));
    }

    @Test
    void aKeyIsAddedUnderItsNameAndListed() throws Exception {
        add("  ward tablet ", new SoftwarePasskey(SoftwarePasskey.ORIGIN).register(offered()))
                .andExpect(redirectedUrl(KEYS))
                .andExpect(flash().attribute("flash", containsString("“ward tablet” is added")));
        assertThat(keys()).extracting(Passkey::label).containsExactly("ward tablet");
        send(get(KEYS))
                .andExpect(content()
                        .string(allOf(
                                containsString("ward tablet"),
                                containsString("not yet"),
                                not(containsString("No key yet")))));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "   ", "a name of more than sixty characters, which no list could show whole", "bell\u0007"})
    void aNameThatCannotBeKeptIsRefused(String label) throws Exception {
        String made = new SoftwarePasskey(SoftwarePasskey.ORIGIN).register(offered());
        int status = add(label, made).andReturn().getResponse().getStatus();
        assertThat(status).isIn(400, 422);
        assertThat(keys()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{}", "null", "no json", "{\"response\":{}}"})
    void whatIsNoNewKeyIsRefusedAndTheNameIsKept(String nonsense) throws Exception {
        offered();
        add("ward tablet", nonsense)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(containsString("No key was added"), containsString("value=\"ward tablet\""))));
        assertThat(keys()).isEmpty();
    }

    @Test
    void aKeyMadeForAnotherChallengeIsRefusedAndAChallengeServesOnce() throws Exception {
        SoftwarePasskey device = new SoftwarePasskey(SoftwarePasskey.ORIGIN);
        offered();
        add("phone", device.register("A".repeat(43))).andExpect(status().isUnprocessableContent());

        String made = device.register(offered());
        add("phone", made).andExpect(redirectedUrl(KEYS));
        add("phone again", made).andExpect(status().isUnprocessableContent());
        assertThat(keys()).hasSize(1);
    }

    @Test
    void aKeyMadeElsewhereOrWithoutCheckingItsOwnerIsRefused() throws Exception {
        SoftwarePasskey elsewhere = new SoftwarePasskey("http://localhost:9999");
        add("phone", elsewhere.register(offered()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString(SoftwarePasskey.ORIGIN)));
        SoftwarePasskey unlocked = new SoftwarePasskey(SoftwarePasskey.ORIGIN).withoutVerification();
        add("phone", unlocked.register(offered())).andExpect(status().isUnprocessableContent());
        assertThat(keys()).isEmpty();
    }

    @Test
    void theSameKeyIsRegisteredOnceForWhomever() throws Exception {
        SoftwarePasskey device = new SoftwarePasskey(SoftwarePasskey.ORIGIN);
        add("phone", device.register(offered())).andExpect(redirectedUrl(KEYS));
        add("phone", device.register(offered()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("registered already")));
        assertThat(keys()).hasSize(1);
    }

    @Test
    void fiveMinutesAfterLogInNothingIsChangedUntilTheCredentialIsShownAgain() throws Exception {
        SoftwarePasskey.of(supervisor.accountId(), passkeys);
        UUID key = keys().get(0).id();
        String made = new SoftwarePasskey(SoftwarePasskey.ORIGIN).register(offered());
        later(() -> {
            send(get(KEYS))
                    .andExpect(content()
                            .string(allOf(
                                    containsString("First show that it is you"),
                                    containsString("ward tablet"),
                                    not(containsString("/remove")),
                                    not(containsString("data-passkey=\"create\"")))));
            add("second", made)
                    .andExpect(status().isForbidden())
                    .andExpect(content()
                            .string(allOf(
                                    containsString("More than five minutes"), containsString("value=\"second\""))));
            send(post(KEYS + "/{id}/remove", key)).andExpect(status().isForbidden());
            send(get(KEYS + "/{id}/remove", key)).andExpect(redirectedUrl(KEYS));
            assertThat(keys()).hasSize(1);

            send(post(KEYS + "/confirm").param("password", "not the password"))
                    .andExpect(status().isUnprocessableContent())
                    .andExpect(content().string(containsString("That is not your password")));
            send(post(KEYS + "/{id}/remove", key)).andExpect(status().isForbidden());

            Cookie before = session;
            send(post(KEYS + "/confirm")
                            .param("password", TestOrganisations.PASSWORD)
                            .param("label", "second"))
                    .andExpect(redirectedUrl(KEYS + "?label=second"));
            assertThat(session)
                    .as("the session goes on under a new name")
                    .isNotNull()
                    .extracting(Cookie::getValue)
                    .isNotEqualTo(before == null ? null : before.getValue());
            send(get(KEYS).param("label", "second")).andExpect(content().string(containsString("value=\"second\"")));
            send(post(KEYS + "/{id}/remove", key)).andExpect(redirectedUrl(KEYS));
            assertThat(keys()).isEmpty();
        });
    }

    @Test
    void aPasskeyShowsWhoItIsOnceForEachChallenge() throws Exception {
        SoftwarePasskey device = SoftwarePasskey.of(supervisor.accountId(), passkeys);
        later(() -> {
            String answer = device.answer(offered());
            send(post(KEYS + "/confirm").param("assertion", answer)).andExpect(redirectedUrl(KEYS));
            send(get(KEYS)).andExpect(content().string(containsString("data-passkey=\"create\"")));
            send(post(KEYS + "/confirm").param("assertion", answer)).andExpect(status().isUnprocessableContent());
        });
    }

    @Test
    void aKeyIsRemovedAfterAQuestion() throws Exception {
        SoftwarePasskey.of(supervisor.accountId(), passkeys);
        UUID key = keys().get(0).id();
        send(get(KEYS + "/{id}/remove", key))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Remove “ward tablet”?")));
        assertThat(keys()).hasSize(1);
        send(post(KEYS + "/{id}/remove", key))
                .andExpect(redirectedUrl(KEYS))
                .andExpect(flash().attribute("flash", containsString("is removed")));
        assertThat(keys()).isEmpty();
        send(post(KEYS + "/{id}/remove", key)).andExpect(status().isNotFound());
    }

    @Test
    void removingAKeyEndsTheOtherSessionsOfItsOwnerAndIsWrittenDown() throws Exception {
        SoftwarePasskey key = new SoftwarePasskey(SoftwarePasskey.ORIGIN);
        add("ward tablet", key.register(offered())).andExpect(redirectedUrl(KEYS));
        Session other = anotherSession(supervisor.username());
        Session foreign = anotherSession("somebody else");

        send(post(KEYS + "/{id}/remove", keys().get(0).id())).andExpect(redirectedUrl(KEYS));
        assertThat(sessions.findById(other.getId())).as("the other one").isNull();
        assertThat(sessions.findById(foreign.getId())).as("somebody else's").isNotNull();
        send(get(KEYS)).andExpect(status().isOk());
        List<String> written = organisation.in(() -> transaction.execute(
                status -> jdbc.sql("select action from audit_entry where record_kind = 'passkey' order by sequence")
                        .query(String.class)
                        .list()));
        assertThat(written).containsExactly("passkey-added", "passkey-removed");
    }

    private Session anotherSession(String username) {
        return keep(sessions, username);
    }

    private static <S extends Session> S keep(FindByIndexNameSessionRepository<S> sessions, String username) {
        S fresh = sessions.createSession();
        fresh.setAttribute(FindByIndexNameSessionRepository.PRINCIPAL_NAME_INDEX_NAME, username);
        sessions.save(fresh);
        return fresh;
    }

    @Test
    void nobodyElseNotEvenAnAdministratorSeesOrRemovesAKey() throws Exception {
        SoftwarePasskey.of(supervisor.accountId(), passkeys);
        UUID key = keys().get(0).id();
        for (Role role : List.of(Role.ADMINISTRATOR, Role.DIRECTOR, Role.SUPERVISOR)) {
            SignedIn other = organisation.join("Ottilie Brannock", role);
            mockMvc.perform(get(KEYS).with(LogIn.as(other)))
                    .andExpect(content().string(not(containsString("ward tablet"))));
            mockMvc.perform(get(KEYS + "/{id}/remove", key).with(LogIn.as(other)))
                    .andExpect(status().isNotFound());
            mockMvc.perform(post(KEYS + "/{id}/remove", key)
                            .with(LogIn.as(other))
                            .with(csrf()))
                    .andExpect(status().isNotFound());
        }
        assertThat(keys()).hasSize(1);
    }

    private interface Work {
        void run() throws Exception;
    }

    private void later(Work work) {
        clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> {
            try {
                work.run();
                return true;
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private String offered() throws Exception {
        Matcher challenge =
                CHALLENGE.matcher(send(get(KEYS)).andReturn().getResponse().getContentAsString());
        assertThat(challenge.find()).isTrue();
        return challenge.group(1);
    }

    private ResultActions add(String label, String attestation) throws Exception {
        return send(post(KEYS).param("label", label).param("attestation", attestation));
    }

    /** As the supervisor, in one session. */
    private ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
        if (session != null) {
            request.cookie(session);
        }
        ResultActions answer =
                mockMvc.perform(request.with(LogIn.as(supervisor)).with(csrf()));
        for (Cookie cookie : answer.andReturn().getResponse().getCookies()) {
            session = cookie;
        }
        return answer;
    }

    private List<Passkey> keys() {
        return passkeys.of(supervisor.accountId());
    }
}
