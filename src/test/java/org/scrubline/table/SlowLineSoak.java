package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitUntilState;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * The score sheet on a phone four times slower than this machine, over 1.6 Mbit/s with 150 ms of delay. The three names
 * and how they are counted are those of the W3C drafts Largest Contentful Paint, Event Timing and Layout Instability.
 * Needs a quiet machine.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class SlowLineSoak {

    private static final int ROUNDS = Integer.getInteger("scrubline.test.rounds", 5);

    /** A person takes longer still; with none, one tap would wait for the work of the one before. */
    private static final int BETWEEN_TAPS_MS = 300;

    private static final double BYTES_A_SECOND = 1.6e6 / 8;
    private static final int DELAY_MS = 150;
    private static final int TIMES_SLOWER = 4;

    private static final String OBSERVE = """
            window.seen = { paint: 0, answer: 0, shift: 0, longest: "" };
            new PerformanceObserver((list) => list.getEntries().forEach((entry) => { seen.paint = entry.startTime; }))
              .observe({ type: "largest-contentful-paint", buffered: true });
            new PerformanceObserver((list) => list.getEntries().forEach((entry) => {
              if (entry.interactionId > 0 && entry.duration > seen.answer) {
                seen.answer = entry.duration;
                seen.longest = `${entry.name}: ${Math.round(entry.processingStart - entry.startTime)} until it begins, `
                  + `${Math.round(entry.processingEnd - entry.processingStart)} at work`;
              }
            })).observe({ type: "event", durationThreshold: 16, buffered: true });
            new PerformanceObserver((list) => list.getEntries().forEach((entry) => {
              seen.shift += entry.hadRecentInput ? 0 : entry.value;
            })).observe({ type: "layout-shift", buffered: true });
            """;

    /** Times in milliseconds, the shift without a unit, bytes with their headers. */
    private record Visit(double paint, double answer, double shift, String longest, long bytes) {}

    @LocalServerPort
    int port;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    private UUID id;
    private BrowserContext context;
    private Page page;
    private CDPSession line;
    private final AtomicLong bytes = new AtomicLong();
    private int visits;

    @BeforeEach
    void logInOnAPhone() {
        Theatre theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 640));
        context.addInitScript(OBSERVE);
        try (Wire wire = new Wire(port)) {
            page = new Assessor(wire, context).logIn(theatre.supervisor()).page();
        }
        line = context.newCDPSession(page);
        line.send("Network.enable");
        line.on(
                "Network.loadingFinished",
                finished -> bytes.addAndGet(finished.get("encodedDataLength").getAsLong()));
        line.send("Network.emulateNetworkConditions", slow());
        line.send("Emulation.setCPUThrottlingRate", json("rate", TIMES_SLOWER));
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void theSheetIsThereAndAnswersAtOnceAndStaysWhereItIs() {
        visit();
        List<Visit> cold = new ArrayList<>();
        List<Visit> warm = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            line.send("Network.clearBrowserCache");
            cold.add(visit());
            warm.add(visit());
        }
        System.out.println("The sheet on a slow line, cold: " + cold);
        System.out.println("The sheet on a slow line, warm: " + warm);
        assertThat(cold).allSatisfy(visit -> {
            assertThat(visit.bytes()).isBetween(20_000L, 150_000L);
            assertThat(visit.paint()).isBetween(1.0, 1_500.0);
            assertThat(visit.answer()).isBetween(1.0, 200.0);
            assertThat(visit.shift()).isLessThanOrEqualTo(.1);
        });
        assertThat(warm).allSatisfy(visit -> assertThat(visit.bytes()).isBetween(1_000L, 25_000L));
    }

    /** Opens the sheet and works on it as its owner does: fold, other levels than before, an event, a sentence. */
    private Visit visit() {
        visits++;
        page.navigate("about:blank");
        bytes.set(0);
        page.navigate(
                "http://localhost:" + port + "/sheets/" + id,
                new Page.NavigateOptions().setWaitUntil(WaitUntilState.NETWORKIDLE));
        long weight = bytes.get();
        for (int step = 1; step <= 19; step++) {
            Locator level = page.locator(
                    "label:has(> input[name='step.TF%02d'][value='%d'])".formatted(step, 3 + (step + visits) % 3));
            if (!level.isVisible()) {
                page.locator("details.phase:not([open]) > summary").first().click();
            }
            level.click();
            page.waitForTimeout(BETWEEN_TAPS_MS);
        }
        page.getByText("Record an event").click();
        page.locator(".chips label:has-text('Bleeding beyond usual')").click();
        page.locator("[data-picks='strength.pick'] button").first().click();
        assertThat(page.locator(".save-state[data-state=saved]").first()).isVisible();
        page.waitForTimeout(1_000);
        return new Visit(
                number("paint"),
                number("answer"),
                number("shift"),
                (String) page.evaluate("() => window.seen.longest"),
                weight);
    }

    private double number(String name) {
        return ((Number) page.evaluate("name => window.seen[name]", name)).doubleValue();
    }

    private static JsonObject json(String name, Number value) {
        JsonObject json = new JsonObject();
        json.addProperty(name, value);
        return json;
    }

    private static JsonObject slow() {
        JsonObject json = json("latency", DELAY_MS);
        json.addProperty("offline", false);
        json.addProperty("downloadThroughput", BYTES_A_SECOND);
        json.addProperty("uploadThroughput", BYTES_A_SECOND);
        return json;
    }
}
