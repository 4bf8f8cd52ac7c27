package org.scrubline.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import java.lang.management.ManagementFactory;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.test.web.servlet.MockMvc;

/**
 * The password hash is computed whatever the name: work of the processor is what a stranger could time. Measured as CPU
 * time of the thread, which other work on the machine does not lengthen; the times themselves are in {@link
 * LoginTimingSoak}.
 */
@ScrublineTest
class LoginHashTests {

    private static final int TRIES = 3;
    private static final String WRONG = "not the password of anybody";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    PasswordEncoder encoder;

    @Autowired
    JdbcClient jdbc;

    TestOrganisation organisation;
    long hash;

    @BeforeEach
    void measureTheHash() {
        organisation = organisations.open();
        String stored = encoder.encode("a quiet test sentence");
        hash = least(() -> encoder.matches(WRONG, stored));
    }

    @Test
    void aWrongPasswordOfAKnownNameIsHashed() {
        String name = organisation.join("Ansel Verrin", Role.SUPERVISOR).username();
        assertThat(logIn(() -> name)).isGreaterThan(hash / 2);
    }

    @Test
    void soIsTheOneOfANameNobodyHas() {
        assertThat(logIn(LoginHashTests::fresh)).isGreaterThan(hash / 2);
    }

    @Test
    void soIsTheOneOfAClosedAccount() {
        var closed = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        jdbc.sql("update login_account set enabled = false where id = :id")
                .param("id", closed.accountId())
                .update();
        assertThat(logIn(closed::username)).isGreaterThan(hash / 2);
    }

    @Test
    void soIsTheOneOfSomebodyInvitedWhoHasNoPasswordYet() {
        String name = fresh();
        organisation.in(() -> people.addPerson(organisation.programme().id(), "Ansel Verrin", name, Role.SUPERVISOR)
                .orThrow());
        assertThat(logIn(() -> name)).isGreaterThan(hash / 2);
    }

    @Test
    void aPageWithoutAPasswordTakesNoSuchTime() {
        assertThat(least(() -> perform(get("/login")))).isLessThan(hash / 2);
    }

    private long logIn(Supplier<String> name) {
        return least(() -> {
            try {
                return mockMvc.perform(post("/login")
                                .param("username", name.get())
                                .param("password", WRONG)
                                .with(csrf())
                                .with(request -> {
                                    request.setRemoteAddr("198.51.100.33");
                                    return request;
                                }))
                        .andExpect(redirectedUrl("/login?error"));
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private Object perform(org.springframework.test.web.servlet.RequestBuilder request) {
        try {
            return mockMvc.perform(request);
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    /** CPU time of the quickest of a few tries, in nanoseconds. */
    private static long least(Supplier<?> work) {
        return LongStream.range(0, TRIES).map(one -> cpu(work)).min().orElseThrow();
    }

    private static long cpu(Supplier<?> work) {
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        work.get();
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before;
    }

    private static String fresh() {
        return "u" + UUID.randomUUID().toString().substring(0, 12);
    }
}
