package org.scrubline.casework.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.WaitUntilState;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** The score sheet in a browser, against the running application. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class ScoringIT {

    private static final int PHONE = 360;
    private static final int PHONE_HEIGHT = 640;

    /** What has focus: a phase to open, the trainee's part as logged, a step without an answer, the review, or else. */
    private static final String FOCUSED = """
            () => {
              const at = document.activeElement;
              if (at.matches("details.phase:not([open]) > summary")) return "closed";
              if (at.matches("button[name=role]")) return "role";
              if (at.matches("input[name^='step.']") && !at.closest("fieldset").querySelector(":checked")) return "blank";
              return at.matches(".verdict-bar button") ? "review" : "";
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
    BrowserContext context;
    Page page;

    @BeforeEach
    void openTheSheetOnAPhone() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        open(new Browser.NewContextOptions().setViewportSize(PHONE, PHONE_HEIGHT));
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void nineteenStepsAnEventAndTwoSentencesTakeAtMostThirtyTaps() {
        Taps taps = new Taps();
        taps.on(page.getByText("Confirm as logged"));
        int level = 3;
        for (String step : steps()) {
            taps.on(answer(step, Integer.toString(level)));
            level = level == 5 ? 3 : level + 1;
        }
        assertThat(page.locator(".save-state[data-state=saved]")).hasCount(20);
        taps.on(page.getByText("Record an event"));
        taps.on(page.locator(".chips label").filter(new Locator.FilterOptions().setHasText("Bleeding beyond usual")));
        taps.on(page.locator(".places button").filter(new Locator.FilterOptions().setHasText("Bleeding control")));
        taps.on(page.locator("[data-picks='strength.pick'] button").first());
        taps.on(page.locator("[data-picks='nextStep.pick'] button").first());
        assertThat(page.locator(".feedback .save-state[data-state=saved]")).hasCount(2);
        shot("full-phone");
        taps.on(page.getByText("Review and sign"));
        page.waitForURL("**/sheets/" + id + "/review");
        assertThat(taps.count).isLessThanOrEqualTo(30);
        Sheet sheet = read();
        assertThat(sheet.steps())
                .hasSize(19)
                .containsEntry("TF01", new Scored(3))
                .containsEntry("TF02", new Scored(4));
        assertThat(sheet.confirmedPart()).isNotNull();
        assertThat(sheet.events()).hasSize(1);
        assertThat(sheet.strength()).contains(": ");
        assertThat(sheet.nextStep()).contains(": ");
        System.out.println("Taps for a sheet of 19 steps with an event and two sentences: " + taps.count);
    }

    @Test
    void theSheetIsAccessibleEmptyAndFullInBothThemes() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            page.reload();
            shot("empty-" + scheme);
            openEverything();
            Axe.assertNoViolations(page);
            shot("unfolded-" + scheme);
        }
        fill();
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            page.reload();
            openEverything();
            Axe.assertNoViolations(page);
            shot("full-" + scheme);
        }
        page.navigate(address("/to-score"));
        Axe.assertNoViolations(page);
        shot("list");
    }

    @Test
    void nothingScrollsSidewaysAndEveryControlIsLargeEnough() {
        fill();
        page.setViewportSize(320, PHONE_HEIGHT);
        page.reload();
        openEverything();
        assertThat(page.evaluate("() => document.documentElement.scrollWidth")).isEqualTo(320);
        Object small = page.evaluate("""
                () => [...document.querySelectorAll("main button, main label:has(input), main select, main input[type=number], main textarea")]
                  .filter((control) => control.checkVisibility() && !control.matches(".first"))
                  .filter((control) => { const box = control.getBoundingClientRect(); return box.height < 43.5 || box.width < 43.5; })
                  .map((control) => control.outerHTML.slice(0, 120))
                """);
        assertThat((List<?>) small).isEmpty();
    }

    @Test
    void thePageIsLight() {
        AtomicInteger requests = new AtomicInteger();
        page.onRequest(request -> requests.incrementAndGet());
        page.reload();
        Object bytes = page.evaluate("""
                () => [performance.getEntriesByType("navigation"), performance.getEntriesByType("resource")].flat()
                  .reduce((sum, entry) => sum + entry.encodedBodySize, 0)
                """);
        int kilobytes = ((Number) bytes).intValue() / 1024;
        System.out.println("The score sheet weighs " + kilobytes + " kB in " + requests + " requests");
        assertThat(kilobytes).isPositive().isLessThanOrEqualTo(70);
    }

    @Test
    void arrowKeysAndSpaceScoreAStep() {
        page.locator("input[name='step.TF01'][value='1']").focus();
        page.keyboard().press("ArrowRight");
        page.keyboard().press("ArrowRight");
        assertThat(mark("TF01")).hasText("saved");
        assertThat(page.locator("input[name='step.TF01'][value='3']")).isChecked();
        page.waitForCondition(() -> read().step("TF01").equals(new Scored(3)));
    }

    /** A phone on its side, which is also a screen of 1280 px at 200 % zoom (WCAG 2.2, 1.4.4 and 2.1.1). */
    @Test
    void theWholeSheetIsScoredByKeyboardAloneOnAPhoneOnItsSide() {
        page.setViewportSize(640, PHONE);
        for (int stops = 0; stops < 200 && !progress().startsWith("19 "); stops++) {
            page.keyboard().press("Tab");
            switch (String.valueOf(page.evaluate(FOCUSED))) {
                case "closed", "role" -> page.keyboard().press("Enter");
                case "blank" -> {
                    page.keyboard().press("Space");
                    page.keyboard().press("ArrowRight");
                    page.keyboard().press("ArrowRight");
                }
                default -> {}
            }
        }
        assertThat(page.evaluate("() => document.documentElement.scrollWidth")).isEqualTo(640);
        while (!"review".equals(page.evaluate(FOCUSED))) {
            page.keyboard().press("Tab");
        }
        page.keyboard().press("Enter");
        page.waitForURL("**/sheets/" + id + "/review");
        assertThat(read().steps()).hasSize(19).containsEntry("TF19", new Scored(3));
        assertThat(read().confirmedPart()).isNotNull();
    }

    private String progress() {
        return page.locator(".verdict-bar .number").textContent();
    }

    @Test
    void anAnswerGivenBeforeTheScriptsHaveComeIsSavedToo() {
        List<Route> held = new java.util.concurrent.CopyOnWriteArrayList<>();
        page.route("**/offline/sheet-page.js", held::add);
        page.navigate(address("/sheets/" + id), new Page.NavigateOptions().setWaitUntil(WaitUntilState.COMMIT));
        answer("TF01", "4").click();
        page.waitForCondition(() -> !held.isEmpty());
        held.forEach(Route::resume);
        assertThat(mark("TF01")).hasText("saved");
        page.waitForCondition(() -> read().step("TF01").equals(new Scored(4)));
    }

    @Test
    void savedIsSaidOnlyAfterTheServerAnswered() {
        List<Route> held = new java.util.concurrent.CopyOnWriteArrayList<>();
        page.route("**/taps", held::add);
        answer("TF01", "4").click();
        page.waitForCondition(() -> held.size() == 1);
        assertThat(mark("TF01")).hasText("saving");
        answer("TF02", "3").click();
        assertThat(mark("TF02")).hasText("saving");
        page.waitForTimeout(200);
        assertThat(held).as("one at a time").hasSize(1);
        assertThat(read().steps()).isEmpty();
        held.get(0).resume();
        assertThat(mark("TF01")).hasText("saved");
        page.waitForCondition(() -> held.size() == 2);
        assertThat(mark("TF02")).hasText("saving");
        held.get(1).resume();
        assertThat(mark("TF02")).hasText("saved");
        assertThat(read().steps()).hasSize(2);
    }

    @Test
    void aLostAnswerIsSentAgainAndAppliedOnce() {
        AtomicInteger sent = new AtomicInteger();
        page.route("**/taps", route -> {
            if (sent.incrementAndGet() == 1) {
                route.fetch();
                route.abort();
            } else {
                route.resume();
            }
        });
        page.getByText("Record an event").click();
        page.locator(".chips label")
                .filter(new Locator.FilterOptions().setHasText("Bleeding beyond usual"))
                .click();
        page.locator(".places button")
                .filter(new Locator.FilterOptions().setHasText("Bleeding control"))
                .click();
        assertThat(page.locator(".unsaved")).containsText("Not saved yet");
        assertThat(page.locator("#events .save-state")).hasText("saved");
        assertThat(page.locator(".unsaved")).hasCount(0);
        assertThat(read().events()).hasSize(1);
        assertThat(read().lockVersion()).isEqualTo(1);
        assertThat(sent.get()).isEqualTo(2);
    }

    @Test
    void nothingIsLostWhileTheNetworkIsAway() {
        context.setOffline(true);
        answer("TF01", "4").click();
        answer("TF02", "2").click();
        assertThat(mark("TF01")).hasText("not saved yet");
        page.getByText("Review and sign").click();
        assertThat(page.locator(".unsaved")).containsText(Pattern.compile("not saved", Pattern.CASE_INSENSITIVE));
        shot("offline");
        context.setOffline(false);
        page.waitForURL("**/review");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
        assertThat(read().step("TF02")).isEqualTo(new Scored(2));
    }

    @Test
    void aTapWhileLoggedOutWaitsForTheLogInAndIsSaved() {
        context.clearCookies();
        answer("TF01", "4").click();
        assertThat(page.locator(".unsaved")).containsText("You are logged out");
        assertThat(mark("TF01")).hasText("not saved yet");
        Page other = context.newPage();
        logIn(other);
        // Tries again after a pause that doubles with every try.
        assertThat(mark("TF01")).hasText("saved", new LocatorAssertions.HasTextOptions().setTimeout(20_000));
        assertThat(page.locator(".unsaved")).hasCount(0);
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void aSheetChangedElsewhereSaysSoAndOffersTheCurrentOne() {
        change(new SheetChange.SetStep("TF01", new Scored(2)));
        answer("TF01", "4").click();
        assertThat(page.locator(".unsaved")).containsText("changed elsewhere");
        assertThat(page.locator(".unsaved")).containsText("Plan and ready: yours 4, stored 2");
        page.getByText("Open the current sheet").click();
        assertThat(page.locator("input[name='step.TF01'][value='2']")).isChecked();
        assertThat(read().step("TF01")).isEqualTo(new Scored(2));
    }

    @Test
    void aRefusedTapGoesBackToWhatIsStoredAndSaysWhy() {
        change(new SheetChange.AddEvent("TAKEOVER", "TF01", org.scrubline.rubric.TakeoverReason.TIME, ""));
        page.reload();
        page.locator("#phase-PREPARATION > summary").click();
        answer("TF01", "5").click();
        assertThat(mark("TF01")).containsText("not saved: Plan and ready was taken over");
        assertThat(page.locator("input[name='step.TF01'][value='1']")).isChecked();
    }

    @Test
    void theRestOfAPhaseTheTakeoverAndTheVerdictFollowOnThePage() {
        answer("TF01", "4").click();
        page.locator("#phase-PREPARATION .rest button")
                .filter(new Locator.FilterOptions().setHasText("not seen"))
                .click();
        assertThat(page.locator("input[name='step.TF02'][value='NOT_SEEN']")).isChecked();
        assertThat(page.locator("#phase-EXPOSURE")).hasAttribute("open", "");
        page.getByText("Record an event").click();
        page.locator(".chips label")
                .filter(new Locator.FilterOptions().setHasText("Takeover by"))
                .click();
        page.locator(".chips label")
                .filter(new Locator.FilterOptions().setHasText("for safety"))
                .click();
        page.locator(".places button")
                .filter(new Locator.FilterOptions().setHasText("Conjunctival opening"))
                .click();
        assertThat(page.locator("#events .save-state")).hasText("saved");
        assertThat(page.locator("input[name='step.TF03'][value='1']")).isChecked();
        assertThat(page.locator("input[name='step.TF05'][value='BY_SUPERVISOR']"))
                .isChecked();
        assertThat(page.locator("#step-TF05 .cause")).hasText("after takeover");
        assertThat(page.locator(".verdict")).hasText(Pattern.compile("not yet safe"));
        page.getByText("Take back Takeover").click();
        assertThat(page.locator("input[name='step.TF05']:checked")).hasCount(0);
        assertThat(read().events()).isEmpty();
    }

    @Test
    void aMeasureIsTurnedTypedAndTakenBack() {
        page.locator("#step-TF02 .more summary").click();
        Locator more = page.locator("#step-TF02 button[data-turn='1']").first();
        for (int i = 0; i < 4; i++) {
            more.click();
        }
        assertThat(mark("TF02")).hasText("saved");
        page.waitForCondition(
                () -> new BigDecimal("1.5").equals(read().measures().get("TF02-DISTANCE")));
        page.locator("#measure-TF02-TF02-DISTANCE").fill("");
        page.locator("#measure-TF02-TF02-DISTANCE").blur();
        page.waitForCondition(() -> read().measures().isEmpty());
    }

    @Test
    void theSheetWorksWithoutScript() {
        context.close();
        open(new Browser.NewContextOptions()
                .setViewportSize(PHONE, PHONE_HEIGHT)
                .setJavaScriptEnabled(false));
        answer("TF01", "4").click();
        page.locator("button:text-is('Save')").click();
        assertThat(page.locator(".flash")).hasText("Saved.");
        assertThat(page.locator("input[name='step.TF01'][value='4']")).isChecked();
        page.getByText("Confirm as logged").click();
        assertThat(page.locator(".role-said")).containsText("did the whole case");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    /** Counts what a thumb does. */
    private static final class Taps {
        private int count;

        void on(Locator control) {
            control.click();
            count++;
        }
    }

    private List<String> steps() {
        return page.locator("section.step").all().stream()
                .map(step -> step.getAttribute("id").substring("step-".length()))
                .toList();
    }

    private Locator answer(String step, String value) {
        return page.locator("label:has(> input[name='step." + step + "'][value='" + value + "'])");
    }

    private Locator mark(String step) {
        return page.locator("#step-" + step + " .save-state");
    }

    private void fill() {
        change(new SheetChange.ConfirmRole(
                org.scrubline.casework.Part.WHOLE_CASE, org.scrubline.casework.Supervision.SCRUBBED));
        for (int i = 0; i < steps().size(); i++) {
            change(new SheetChange.SetStep(steps().get(i), new Scored(3 + i % 3)));
        }
        change(new SheetChange.SetStep("TF02", new StepState.NotSeen()));
        change(new SheetChange.AddEvent(
                "TAKEOVER", "TF12", org.scrubline.rubric.TakeoverReason.SAFETY, "Took the punch."));
        change(new SheetChange.SetFeedback("Calm hands.", "Loosen the suture earlier."));
    }

    private void openEverything() {
        page.evaluate("() => document.querySelectorAll('details').forEach(part => part.open = true)");
    }

    private void open(Browser.NewContextOptions options) {
        context = Chromium.browser().newContext(options);
        page = context.newPage();
        logIn(page);
        page.navigate(address("/sheets/" + id));
    }

    private void logIn(Page where) {
        where.navigate(address("/login"));
        where.locator("input[name=username]").fill(theatre.supervisor().username());
        where.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        where.locator("main button[type=submit]").click();
        where.waitForURL(Pattern.compile("/(to-score|sheets/.+)$"));
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }

    private Sheet read() {
        return theatre.organisation().in(() -> sheets.get(id));
    }

    private void change(SheetChange change) {
        theatre.organisation()
                .in(() -> sheets.change(theatre.supervisor(), id, read().lockVersion(), change)
                        .orThrow());
    }

    private void shot(String name) {
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            page.screenshot(new Page.ScreenshotOptions().setPath(Path.of(directory, "sheet-" + name + ".png")));
        }
    }
}
