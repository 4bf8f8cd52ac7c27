package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Chromium;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * Nothing lost, nothing twice, nothing changed, whatever fails in whatever order: seeded schedules with the application's
 * own outbox in the browser and a server in memory. {@code -Dscrubline.test.schedules=10000} runs more of them.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class ScheduleIT {

    private static final int SCHEDULES = Integer.getInteger("scrubline.test.schedules", 500);

    private static final String RUN = """
            async ([from, count, transcript, broken]) => {
              const { runAll } = await import("/js/offline/test/schedules.js");
              const { facts, start } = JSON.parse(transcript);
              return runAll(from, count, facts, start, broken);
            }
            """;

    @LocalServerPort
    int port;

    @Autowired
    TapAnswers answers;

    @Autowired
    SheetWords words;

    @Autowired
    TableWords tableWords;

    @Autowired
    RubricLibrary library;

    BrowserContext context;
    Page page;
    String transcript;

    @BeforeEach
    void open() {
        context = Chromium.browser().newContext();
        page = context.newPage();
        page.route(
                "**/js/offline/test/schedules.js",
                route -> route.fulfill(new Route.FulfillOptions()
                        .setContentType("text/javascript")
                        .setPath(Path.of("src/test/resources/offline/schedules.js"))));
        page.navigate("http://localhost:" + port + "/login");
        SheetRun run = new SheetRun(library.rubric(Procedures.TRAB_FORNIX), library.events(), false, answers, words);
        transcript = SheetRun.transcript(run.draft(), tableWords, List.of(), List.of());
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void everyScheduleEndsWithExactlyWhatWasConfirmedOnTheScreen() {
        assertThat(page.evaluate(RUN, List.of(1, SCHEDULES, transcript, false))).isNull();
        System.out.println("Schedules of taps, failures and restarts: " + SCHEDULES);
    }

    @Test
    void aServerThatForgotWhichTapsItHasWouldBeFound() {
        assertThat(page.evaluate(RUN, List.of(1, 50, transcript, true))).isNotNull();
    }
}
