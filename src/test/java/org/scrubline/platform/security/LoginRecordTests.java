package org.scrubline.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestBuilders.formLogin;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.RefusedLogins;
import org.scrubline.platform.RefusedLogins.Refused;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** Log-ins are written down: who came in, and how often somebody was refused. */
@ScrublineTest
class LoginRecordTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    RefusedLogins refusedLogins;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn administrator;
    SignedIn trainee;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
    }

    @Test
    void comingInIsWrittenDownWithSessionAndAddress() throws Exception {
        mvc.perform(formLogin().user(trainee.username()).password(TestOrganisations.PASSWORD))
                .andExpect(redirectedUrl("/"));

        String file = page("/done.csv?action=logged-in");
        assertThat(file.lines()).hasSize(2);
        assertThat(file)
                .contains("Fenna Hallinor logged in.", ",TRAINEE,", "127.0.0.1")
                .containsPattern(",[0-9a-f]{64},127");
    }

    @Test
    void aWrongPasswordIsCountedTheSameWhetherOrNotTheAccountExists() throws Exception {
        String nobody = "x" + trainee.username().substring(1);
        for (String name : List.of(trainee.username(), nobody)) {
            mvc.perform(formLogin().user(name).password("not the password")).andExpect(redirectedUrl("/login?error"));
        }
        Instant before = clock.instant().minus(Duration.ofHours(1));
        for (String name : List.of(trainee.username(), nobody)) {
            List<Refused> refused = refusedLogins.of(List.of(name), before);
            assertThat(refused).singleElement().satisfies(one -> {
                assertThat(one.wrong()).isEqualTo(1);
                assertThat(one.blocked()).isZero();
                assertThat(one.lastAddress()).isEqualTo("127.0.0.1");
            });
        }
        assertThat(page("/done"))
                .contains("Log-ins to accounts of this programme that were refused", trainee.username())
                .doesNotContain(nobody);
        assertThat(page("/done.csv?action=logged-in").lines()).hasSize(1);
    }

    @Test
    void whoHasToWaitIsCountedApart() throws Exception {
        for (int i = 0; i < 5; i++) {
            mvc.perform(logIn("not the password")).andExpect(redirectedUrl("/login?error"));
        }
        mvc.perform(logIn(TestOrganisations.PASSWORD)).andExpect(status().is(429));
        Refused refused = refusedLogins
                .of(List.of(trainee.username()), clock.instant().minus(Duration.ofHours(2)))
                .get(0);
        assertThat(refused.wrong() + refused.blocked()).isEqualTo(6);
        assertThat(refused.blocked()).isEqualTo(1);
    }

    @Test
    void refusalsAreForgottenAfterNinetyDays() throws Exception {
        mvc.perform(formLogin().user(trainee.username()).password("not the password"));
        Instant before = clock.instant().minus(Duration.ofHours(1));
        refusedLogins.forgetOld();
        assertThat(refusedLogins.of(List.of(trainee.username()), before)).hasSize(1);

        clock.at(clock.instant().plus(Duration.ofDays(91)), () -> {
            refusedLogins.forgetOld();
            return true;
        });
        assertThat(refusedLogins.of(List.of(trainee.username()), before)).isEmpty();
        assertThat(refusedLogins.of(List.of(), before)).isEmpty();
    }

    private MockHttpServletRequestBuilder logIn(String password) {
        return post("/login")
                .servletPath("/login")
                .param("username", trainee.username())
                .param("password", password)
                .with(csrf());
    }

    private String page(String path) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(administrator)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }
}
