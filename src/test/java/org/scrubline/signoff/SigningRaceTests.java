package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class SigningRaceTests {

    private static final int AT_ONCE = 50;

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    Signing signing;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Test
    void fiftySignaturesAtOnceAreOneAndAllAreAnsweredWithIt() throws Exception {
        Theatre theatre = sheetFixture.theatre(organisations);
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(1)));
        String hash = fixture.preview(theatre, sheet).contentHash();

        List<MockHttpServletResponse> answers = atOnce(() -> mockMvc.perform(post("/sheets/{id}/sign", sheet)
                        .param("hash", hash)
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(theatre.supervisor()))
                        .with(csrf()))
                .andReturn()
                .getResponse());

        assertThat(answers)
                .hasSize(AT_ONCE)
                .allSatisfy(answer -> assertThat(answer.getStatus()).isEqualTo(302));
        assertThat(answers.stream()
                        .map(MockHttpServletResponse::getRedirectedUrl)
                        .distinct())
                .hasSize(1);
        assertThat(count(theatre, "signed_sheet", "sheet_id", sheet)).isEqualTo(1);
    }

    /** The same below the password, where nothing slows the threads down before they meet. */
    @Test
    void fiftyThreadsBelowTheCredentialGetOneRecord() throws Exception {
        Theatre theatre = sheetFixture.theatre(organisations);
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(1)));

        List<UUID> records = atOnce(() -> theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow()
                        .id()));

        assertThat(records).hasSize(AT_ONCE);
        assertThat(records.stream().distinct()).hasSize(1);
        assertThat(count(theatre, "signed_sheet", "sheet_id", sheet)).isEqualTo(1);
        assertThat(count(theatre, "signed_step", "signed_sheet_id", records.get(0)))
                .isEqualTo(SignedContent.read(theatre.organisation()
                                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                                        .orThrow())
                                .content())
                        .reviewed()
                        .steps()
                        .size());
    }

    private static <T> List<T> atOnce(Callable<T> work) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE);
        try {
            CountDownLatch start = new CountDownLatch(1);
            List<Future<T>> running = new ArrayList<>();
            for (int i = 0; i < AT_ONCE; i++) {
                running.add(threads.submit(() -> {
                    start.await();
                    return work.call();
                }));
            }
            start.countDown();
            List<T> answers = new ArrayList<>();
            for (Future<T> one : running) {
                answers.add(one.get());
            }
            return answers;
        } finally {
            threads.shutdownNow();
        }
    }

    private int count(Theatre theatre, String table, String column, UUID id) {
        return theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("select count(*) from " + table + " where " + column + " = :id")
                                .param("id", id)
                                .query(Integer.class)
                                .single()));
    }
}
