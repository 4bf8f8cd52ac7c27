package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.time.Instant;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * Seeded schedules of taps, faults, cuts and reloads in a real browser against the real server: what stood on the screen is
 * what the server has. {@code -Dscrubline.test.browser-schedules=200} runs more of them, {@code
 * -Dscrubline.test.first-schedule=101} begins with another.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class BrowserScheduleIT {

    private static final int FIRST = Integer.getInteger("scrubline.test.first-schedule", 1);
    private static final int SCHEDULES = Integer.getInteger("scrubline.test.browser-schedules", 20);

    /** As many open sheets as one person has at most. */
    private static final int ON_ONE_DEVICE = 20;

    private static final int ACTS = 8;

    @LocalServerPort
    int port;

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Test
    void whateverFailsTheServerEndsWithWhatStoodOnTheScreen() {
        int last = FIRST + SCHEDULES - 1;
        for (int first = FIRST; first <= last; first += ON_ONE_DEVICE) {
            onOneDevice(first, Math.min(first + ON_ONE_DEVICE - 1, last));
        }
        System.out.printf("Schedules in the browser: %d to %d%n", FIRST, last);
    }

    private void onOneDevice(int first, int last) {
        Theatre theatre = fixture.theatre(organisations);
        try (Wire wire = new Wire(port);
                BrowserContext context =
                        Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 640))) {
            Assessor assessor =
                    new Assessor(wire, context).logIn(theatre.supervisor()).setUp(Assessor.PHRASE, 0);
            for (int seed = first; seed <= last; seed++) {
                UUID id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
                Map<String, String> expected = run(new Random(seed), wire, assessor, id);
                Sheet sheet = theatre.organisation().in(() -> sheets.get(id));
                Map<String, String> stored = new TreeMap<>();
                sheet.steps().forEach((code, state) -> stored.put(code, String.valueOf(((Scored) state).level())));
                assertThat(stored).as("seed %d", seed).isEqualTo(expected);
                assertThat(assessor.stored("taps")).as("seed %d", seed).isZero();
            }
        }
    }

    private static Map<String, String> run(Random random, Wire wire, Assessor assessor, UUID id) {
        Page page = assessor.page();
        assessor.come();
        page.locator("#sheets a[href='#" + id + "']").click();
        assessor.unfold();
        Map<String, String> said = new TreeMap<>();
        for (int act = 0; act < ACTS; act++) {
            switch (random.nextInt(6)) {
                case 0 -> wire.cut();
                case 1 -> wire.mend();
                case 2 ->
                    wire.next(Wire.Fault.values()[random.nextInt(4)], random.nextBoolean() ? "/taps" : "/receipt", 1);
                case 3 -> reload(assessor);
                default -> tap(random, assessor, said);
            }
        }
        wire.mend();
        page.evaluate("() => dispatchEvent(new Event('online'))");
        page.waitForCondition(
                () -> assessor.stored("taps") == 0, new Page.WaitForConditionOptions().setTimeout(90_000));
        return said;
    }

    private static void reload(Assessor assessor) {
        assessor.page().reload();
        assessor.unfold();
    }

    private static void tap(Random random, Assessor assessor, Map<String, String> said) {
        String step = "TF%02d".formatted(1 + random.nextInt(19));
        String level = String.valueOf(1 + random.nextInt(5));
        Page page = assessor.page();
        assessor.answer(step, level);
        assertThat(page.locator("input[name='step." + step + "'][value='" + level + "']"))
                .isChecked();
        said.put(step, level);
        page.waitForCondition(
                () -> page.locator(".save-state[data-state=saving]").count() == 0);
    }
}
