package org.scrubline.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

@ScrublineTest
class PasskeyLogInTests {

    private static final Pattern CHALLENGE = Pattern.compile("data-challenge=\"([\\w-]{43})\"");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Passkeys passkeys;

    @Autowired
    JdbcClient jdbc;

    SignedIn supervisor;
    SoftwarePasskey passkey;

    @Nullable
    Cookie session;

    @BeforeEach
    void join() {
        supervisor = organisations.open().join("Ansel Verrin", Role.SUPERVISOR);
        passkey = SoftwarePasskey.of(supervisor.accountId(), passkeys);
    }

    @Test
    void aPasskeyLogsItsOwnerInUnderANewSession() throws Exception {
        String challenge = asked();
        Cookie before = session;
        logIn(passkey.answer(challenge, supervisor.accountId())).andExpect(redirectedUrl("/"));

        assertThat(session).isNotNull().isNotEqualTo(before);
        assertThat(session.getValue()).isNotEqualTo(before == null ? null : before.getValue());
        send(get("/account/keys"))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Ansel Verrin")))
                .andExpect(content().string(containsString("data-passkey=\"create\"")));
        assertThat(passkeys.of(supervisor.accountId()).get(0).lastUsedAt()).isNotNull();
    }

    @Test
    void itLeadsToThePageThatWasAskedFor() throws Exception {
        send(get("/signed").accept("text/html")).andExpect(status().is3xxRedirection());
        logIn(passkey.answer(asked())).andExpect(redirectedUrlPattern("**/signed?continue"));
    }

    @Test
    void anAnswerServesOnce() throws Exception {
        String answer = passkey.answer(asked());
        logIn(answer).andExpect(redirectedUrl("/"));
        session = null;
        asked();
        logIn(answer).andExpect(redirectedUrl("/login?passkey"));
    }

    @Test
    void anAnswerToAnotherChallengeOrWithoutAnyDoesNotLogIn() throws Exception {
        asked();
        logIn(passkey.answer("A".repeat(43))).andExpect(redirectedUrl("/login?passkey"));
        session = null;
        logIn(passkey.answer("")).andExpect(redirectedUrl("/login?passkey"));
        send(get("/login").param("passkey", ""))
                .andExpect(content().string(containsString("This passkey opens no account here")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{}", "null", "7", "{\"rawId\":\"!\"}"})
    void whatIsNoAnswerDoesNotLogIn(String nonsense) throws Exception {
        asked();
        logIn(nonsense).andExpect(redirectedUrl("/login?passkey"));
    }

    @Test
    void aRemovedOrUnknownPasskeyDoesNotLogIn() throws Exception {
        SoftwarePasskey unknown = new SoftwarePasskey(SoftwarePasskey.ORIGIN);
        logIn(unknown.answer(asked())).andExpect(redirectedUrl("/login?passkey"));

        UUID key = passkeys.of(supervisor.accountId()).get(0).id();
        passkeys.remove(supervisor.accountId(), key);
        logIn(passkey.answer(asked())).andExpect(redirectedUrl("/login?passkey"));
    }

    @Test
    void aDeviceThatDidNotCheckItsOwnerDoesNotLogIn() throws Exception {
        logIn(passkey.withoutVerification().answer(asked())).andExpect(redirectedUrl("/login?passkey"));
    }

    @Test
    void aClosedAccountStaysClosed() throws Exception {
        jdbc.sql("update login_account set enabled = false where id = :id")
                .param("id", supervisor.accountId())
                .update();
        logIn(passkey.answer(asked())).andExpect(redirectedUrl("/login?passkey"));
    }

    @Test
    void aStrangerWhoGuessesPasswordsDoesNotKeepThePasskeyOut() throws Exception {
        for (int i = 0; i < 5; i++) {
            send(post("/login").param("username", supervisor.username()).param("password", "guess " + i));
        }
        send(post("/login").param("username", supervisor.username()).param("password", TestOrganisations.PASSWORD))
                .andExpect(status().isTooManyRequests());
        logIn(passkey.answer(asked())).andExpect(redirectedUrl("/"));
    }

    @Test
    void wrongAnswersSlowTheAccountsPasswordsDown() throws Exception {
        for (int i = 0; i < 5; i++) {
            asked();
            logIn(passkey.answer("A".repeat(43))).andExpect(redirectedUrl("/login?passkey"));
        }
        send(post("/login").param("username", supervisor.username()).param("password", TestOrganisations.PASSWORD))
                .andExpect(status().isTooManyRequests());
    }

    @Test
    void anAddressThatSendsManyWrongAnswersHasToWait() throws Exception {
        for (int i = 0; i < 50; i++) {
            send(post("/login/passkey").param("assertion", "{}").with(request -> {
                request.setRemoteAddr("203.0.113.77");
                return request;
            }));
        }
        send(post("/login/passkey").param("assertion", "{}").with(request -> {
                    request.setRemoteAddr("203.0.113.77");
                    return request;
                }))
                .andExpect(status().isTooManyRequests());
        logIn(passkey.answer(asked())).andExpect(redirectedUrl("/"));
    }

    private String asked() throws Exception {
        Matcher challenge =
                CHALLENGE.matcher(send(get("/login")).andReturn().getResponse().getContentAsString());
        assertThat(challenge.find()).isTrue();
        return challenge.group(1);
    }

    private ResultActions logIn(String answer) throws Exception {
        return send(post("/login/passkey").param("assertion", answer));
    }

    private ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
        if (session != null) {
            request.cookie(session);
        }
        ResultActions answer = mockMvc.perform(request.with(csrf()));
        for (Cookie cookie : answer.andReturn().getResponse().getCookies()) {
            session = cookie;
        }
        return answer;
    }
}
