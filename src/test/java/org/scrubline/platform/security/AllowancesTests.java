package org.scrubline.platform.security;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class AllowancesTests {

    private static final Duration HOUR = Duration.ofHours(1);
    private static final Instant NOON = Instant.parse("2026-03-12T12:00:00Z");

    @Autowired
    Allowances allowances;

    @Autowired
    ScrublineClock clock;

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    String subject;

    @BeforeEach
    void name() {
        subject = "test:" + UUID.randomUUID();
    }

    private Optional<Duration> at(Duration after) {
        return clock.at(NOON.plus(after), () -> allowances.take(subject, 4, HOUR));
    }

    @Test
    void asManyAreThereAtOnceAndTheNextComesWhenAShareOfTheTimeHasPassed() {
        for (int i = 0; i < 4; i++) {
            assertThat(at(Duration.ZERO)).isEmpty();
        }
        assertThat(at(Duration.ZERO)).contains(Duration.ofMinutes(15));
        assertThat(at(Duration.ofMinutes(10))).contains(Duration.ofMinutes(5));
        assertThat(at(Duration.ofMinutes(15))).isEmpty();
        assertThat(at(Duration.ofMinutes(16))).contains(Duration.ofMinutes(14));
    }

    @Test
    void afterTheWholeTimeAllAreThereAgainAndNoMore() {
        at(Duration.ZERO);
        for (int i = 0; i < 4; i++) {
            assertThat(at(Duration.ofDays(3))).isEmpty();
        }
        assertThat(at(Duration.ofDays(3))).isPresent();
    }

    @Test
    void ofManyAtOnceNoMoreThanThereAreGetOne() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(16);
        List<Future<Optional<Duration>>> answers = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            answers.add(threads.submit(() -> at(Duration.ZERO)));
        }
        int taken = 0;
        for (Future<Optional<Duration>> answer : answers) {
            taken += answer.get().isEmpty() ? 1 : 0;
        }
        threads.shutdownNow();
        assertThat(taken).isEqualTo(4);
    }

    @Test
    void theEleventhFileOfAnHourIsAskedToWaitAndAnotherPersonIsNot() throws Exception {
        TestOrganisations.TestOrganisation organisation = organisations.open();
        SignedIn reader = organisation.join("Ansel Verrin", Role.TRAINEE);
        for (int i = 0; i < 10; i++) {
            assertThat(file(reader).getStatus()).isEqualTo(200);
        }
        MockHttpServletResponse late = file(reader);
        assertThat(late.getStatus()).isEqualTo(429);
        assertThat(late.getHeader("Retry-After")).asInt().isBetween(300, 361);
        assertThat(file(organisation.join("Fenna Hallinor", Role.TRAINEE)).getStatus())
                .isEqualTo(200);
        assertThat(mockMvc.perform(get("/seen").with(LogIn.as(reader)))
                        .andReturn()
                        .getResponse()
                        .getStatus())
                .as("the page itself is no file")
                .isEqualTo(200);
    }

    private MockHttpServletResponse file(SignedIn who) throws Exception {
        return mockMvc.perform(get("/seen.csv").with(LogIn.as(who))).andReturn().getResponse();
    }
}
