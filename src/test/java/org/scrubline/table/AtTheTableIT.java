package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
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

/** The page at the table as its owner meets it: set up, scored without a network, locked, opened again. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class AtTheTableIT {

    private static final int MOST_TAPS = 30;

    /** Pause between two taps in milliseconds; the bar is a sheet in 90 s with 2 s between taps. */
    private static final int PAUSE = Integer.getInteger("scrubline.test.pause", 0);

    /** Whether the sheet the device ended with and the one the server has are the same bytes in canonical form. */
    private static final String SAME_BYTES = """
            async (sheet) => {
              const at = [...document.scripts].find((script) => script.src.includes("/offline/")).src.replace(/[^/]+$/, "");
              const { stillOpen } = await import(`${at}vault.js`);
              const { DeviceStore } = await import(`${at}device-store.js`);
              const { base } = await (await DeviceStore.of(await stillOpen())).package(sheet);
              const canonical = JSON.stringify(base, (key, one) =>
                one && typeof one === "object" && !Array.isArray(one)
                  ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1))) : one);
              const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(canonical)));
              const mine = [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
              return (await (await fetch(`/sheets/${sheet}/receipt`)).json()).hash === mine;
            }
            """;

    /** Makes every tap wait, before it is kept, for one call of {@code letOne()}. */
    private static final String SLOW_DISK = """
            async () => {
              const at = [...document.scripts].find((script) => script.src.includes("/offline/")).src.replace(/[^/]+$/, "");
              const { DeviceStore } = await import(`${at}device-store.js`);
              const { add } = DeviceStore.prototype;
              const held = [];
              DeviceStore.prototype.add = async function (tap) {
                await new Promise((let) => held.push(let));
                return add.call(this, tap);
              };
              window.letOne = () => held.shift()();
              window.waits = () => held.length;
            }
            """;

    @LocalServerPort
    int port;

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    Theatre theatre;
    UUID id;
    Wire wire;
    BrowserContext context;
    Assessor assessor;
    Page page;
    int taps;

    @BeforeEach
    void logIn() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        wire = new Wire(port);
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 640));
        assessor = new Assessor(wire, context).logIn(theatre.supervisor());
        page = assessor.page();
    }

    @AfterEach
    void close() {
        context.close();
        wire.close();
    }

    @Test
    void everyStateOfThePageIsAccessibleInBothThemesAndAtThreeHundredAndTwenty() {
        page.setViewportSize(320, 640);
        page.navigate(wire.address("/at-the-table"));
        assertThat(page.locator("#set-up")).isVisible();
        check();
        page.locator("#set-up button").click();
        assertThat(page.locator("#set-up [role=alert]")).containsText("six characters");
        check();
        assessor.setUp(Assessor.PHRASE, 1);
        check();
        wire.cut();
        assessor.openTheSheet().answer("TF01", "4").sees("TF01", "kept");
        assertThat(page.locator(".unsaved")).containsText("No connection");
        check();
        page.navigate(wire.address("/at-the-table"));
        assertThat(page.locator("#said")).containsText("No connection");
        page.locator("#lock").click();
        assertThat(page.locator("#lock-phrase")).isVisible();
        check();
    }

    @Test
    void nineteenStepsAnEventAndTwoSentencesAreScoredWithTheNetworkCut() {
        assessor.setUp(Assessor.PHRASE, 1);
        wire.cut();
        long start = System.nanoTime();
        tap("#sheets a");
        assessor.unfold();
        tap("button[name=role]");
        for (int step = 1; step <= 19; step++) {
            tap("label:has(> input[name='step.TF%02d'][value='%d'])".formatted(step, 3 + step % 3));
        }
        tap(".chips label:has-text('Bleeding beyond usual')");
        tap(".places button:has-text('Bleeding control')");
        tap("[data-picks='strength.pick'] button >> nth=0");
        tap("[data-picks='nextStep.pick'] button >> nth=0");
        assertThat(page.locator(".save-state[data-state=kept]")).hasCount(23);
        assertThat(page.locator(".verdict-bar .number")).containsText("19 of 19");
        Duration took = Duration.ofNanos(System.nanoTime() - start);
        assertThat(taps).isLessThanOrEqualTo(MOST_TAPS);
        assertThat(took).isLessThan(Duration.ofSeconds(90));
        System.out.println("A sheet without a network: " + taps + " taps, " + took.toMillis() + " ms");
        wire.mend();
        page.waitForCondition(
                () -> assessor.stored("taps") == 0, new Page.WaitForConditionOptions().setTimeout(60_000));
        var sheet = theatre.organisation().in(() -> sheets.get(id));
        assertThat(sheet.steps()).hasSize(19).containsEntry("TF01", new Scored(4));
        assertThat(sheet.events()).hasSize(1);
        assertThat(sheet.nextStep()).contains(": ");
        assertThat(page.evaluate(SAME_BYTES, id.toString())).isEqualTo(true);
    }

    @Test
    void anAnswerStandsWhileAnEarlierOneIsKeptAndPainted() {
        assessor.setUp(Assessor.PHRASE, 1).openTheSheet();
        wire.cut();
        page.evaluate(SLOW_DISK);
        assessor.answer("TF01", "4");
        page.waitForFunction("() => waits() === 1");
        assessor.answer("TF02", "2").answer("TF03", "5");
        letOne();
        assessor.sees("TF01", "kept");
        assertThat(page.locator(".verdict-bar .number")).containsText("1 of 19");
        assertThat(assessor.answers()).isEqualTo(Map.of("TF01", "4", "TF02", "2", "TF03", "5"));
        letOne();
        letOne();
        assertThat(page.locator(".verdict-bar .number")).containsText("3 of 19");
        assertThat(assessor.answers()).isEqualTo(Map.of("TF01", "4", "TF02", "2", "TF03", "5"));
    }

    private void letOne() {
        page.waitForFunction("() => waits() === 1");
        page.evaluate("() => letOne()");
    }

    @Test
    void threeMinutesWithoutATouchLockThePageAndCostNothing() {
        assessor.setUp(Assessor.PHRASE, 1).openTheSheet();
        wire.cut();
        page.locator("#strength").pressSequentially("Half a sent");
        assertThat(page.locator(".feedback .save-state").first()).hasAttribute("data-state", "draft");
        page.clock().install();
        page.evaluate("""
                () => {
                  const kept = JSON.parse(sessionStorage.getItem("scrubline-tab"));
                  sessionStorage.setItem("scrubline-tab", JSON.stringify({ ...kept, at: kept.at - 181000 }));
                }
                """);
        page.clock().runFor(1500);
        assertThat(page.locator("#lock-phrase")).isVisible();
        assertThat(page.locator("body")).not().containsText("Plan and ready");
        assessor.unlock(Assessor.PHRASE).unfold();
        assertThat(page.locator("#strength")).hasValue("Half a sent");
        page.locator("#strength").blur();
    }

    @Test
    void onThePageOfTheServerTheSameTapsAreKept() {
        assessor.setUp(Assessor.PHRASE, 1);
        page.navigate(wire.address("/sheets/" + id));
        assessor.unfold();
        wire.cut();
        assessor.answer("TF01", "4").sees("TF01", "kept");
        assertThat(assessor.stored("taps")).isEqualTo(1);
        page.getByText("Log out").click();
        assertThat(page.locator(".unsaved")).containsText("stay on this device");
        page.reload();
        assertThat(page.locator("#sheets li")).hasCount(1);
        assertThat(page.locator("#sheets li")).containsText("1 not sent yet");
        wire.mend();
        page.waitForCondition(
                () -> assessor.stored("taps") == 0, new Page.WaitForConditionOptions().setTimeout(40_000));
        assertThat(theatre.organisation().in(() -> sheets.get(id)).step("TF01")).isEqualTo(new Scored(4));
    }

    private void tap(String control) {
        page.locator(control).first().click();
        taps++;
        if (PAUSE > 0) {
            page.waitForTimeout(PAUSE);
        }
    }

    private void check() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            Axe.assertNoViolations(page);
        }
        assertThat(page.evaluate("() => document.documentElement.scrollWidth")).isEqualTo(320);
        Object small = page.evaluate("""
                () => [...document.querySelectorAll("main button, main a.button, main input:not([type=radio]):not([type=hidden]), main select")]
                  .filter((control) => control.checkVisibility() && !control.matches(".first"))
                  .filter((control) => { const box = control.getBoundingClientRect(); return box.height < 43.5 || box.width < 43.5; })
                  .map((control) => control.outerHTML.slice(0, 120))
                """);
        assertThat((List<?>) small).isEmpty();
    }
}
