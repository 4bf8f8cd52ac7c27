package org.scrubline.casework.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.PatientIdentity;
import org.scrubline.platform.PatientIdentityTests;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** A supervisor's evening and theatre day in a browser: the list, the code, the sheet's helpers, the reminders. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class, History.class})
class TheatreDayIT {

    private static final int PHONE = 360;
    private static final int DESK = 1280;
    private static final String TIME = "#measure-TF06-TF06-TIME";

    @LocalServerPort
    int port;

    @Autowired
    Cases cases;

    @Autowired
    CaseChanges changes;

    @Autowired
    Sheets sheets;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;
    SignedIn second;
    BrowserContext context;
    Page page;

    @BeforeEach
    void openTheProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        second = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void theClockRunsThroughAReloadAndFillsTheMeasureToTheSecond() {
        UUID id = sheet();
        open(PHONE, ColorScheme.LIGHT, here.supervisor());
        Instant start = now();
        context.clock().setFixedTime(start.toEpochMilli());
        page.navigate(address("/sheets/" + id));
        openEverything();
        Locator clock = page.locator(".measure:has(" + TIME + ") .timer button");
        assertThat(clock).containsText("Start clock");
        clock.focus();
        page.keyboard().press("Enter");
        assertThat(clock).containsText("Stop and fill in");

        context.clock().setFixedTime(start.plusSeconds(100).toEpochMilli());
        page.reload();
        assertThat(clock).containsText("Stop and fill in");
        assertThat(page.locator(".measure:has(" + TIME + ") .elapsed")).hasText("1 min 40 s");

        context.clock().setFixedTime(start.plusSeconds(165).toEpochMilli());
        clock.focus();
        page.keyboard().press("Enter");
        assertThat(page.locator(TIME)).hasValue("2.75");
        assertThat(page.locator(".measure:has(" + TIME + ") .elapsed")).hasText("2 min 45 s");
        page.waitForCondition(
                () -> new BigDecimal("2.75").equals(read(id).measures().get("TF06-TIME")));
        page.reload();
        openEverything();
        assertThat(clock).containsText("Start clock");
    }

    @Test
    void aTextThatMayNameAPatientIsKeptByOneMorePress() {
        UUID id = sheet();
        open(PHONE, ColorScheme.LIGHT, here.supervisor());
        page.navigate(address("/sheets/" + id));
        page.locator("#strength").fill("Mr Tarn’s bed was dry");
        page.locator("#strength").blur();
        assertThat(page.locator(".feedback .save-state").first()).containsText("title and a name");
        assertThat(read(id).strength()).isEmpty();
        page.getByText("keep it as it is").click();
        assertThat(page.locator(".feedback .save-state").first()).hasText("saved");
        assertThat(page.getByText("keep it as it is")).hasCount(0);
        assertThat(read(id).strength()).isEqualTo("Mr Tarn’s bed was dry");
    }

    @Test
    void theBrowserReadsThePatternsAsTheServerDoes() {
        open(PHONE, ColorScheme.LIGHT, here.supervisor());
        for (String text : PatientIdentityTests.HARMLESS) {
            assertThat(found(text)).as(text).isEmpty();
        }
        for (String line : PatientIdentityTests.SUSPECT) {
            String text = line.substring(0, line.indexOf('|'));
            assertThat(found(text))
                    .as(text)
                    .contains(PatientIdentity.hints(text).get(0).kind());
        }
    }

    /** Patterns alone: what also has to check out by arithmetic is left to whoever uses them. */
    private List<String> found(String text) {
        List<?> kinds = (List<?>) page.evaluate("""
                async (text) => (await (await fetch("/js/patient-identity.json")).json())
                    .filter((rule) => !(rule.check && !/943 476 5919|4010232137/.test(text)))
                    .filter((rule) => new RegExp(rule.pattern, rule.flags).test(text))
                    .map((rule) => rule.kind)
                """, text);
        return kinds.stream().map(Object::toString).toList();
    }

    @Test
    void theListOfTomorrowIsOneSheetOfPaperAndEveryPageIsAccessible() throws IOException {
        history();
        for (String reference : List.of("K7-311", "K7-312", "K7-313", "K7-314")) {
            plan(reference);
        }
        UUID id = sheet();
        open(DESK, ColorScheme.LIGHT, here.supervisor());
        page.navigate(address("/list"));
        assertThat(page.locator(".planned")).hasCount(4);
        assertThat(page.locator("[data-print]")).isVisible();
        byte[] pdf = page.pdf(new Page.PdfOptions().setFormat("A4").setPreferCSSPageSize(true));
        keep(pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
        }
        look("desk", "/list", "/sheets/" + id, "/reminders", "/my-notices", "/hand-off");
        context.close();

        open(PHONE, ColorScheme.DARK, here.supervisor());
        look("phone", "/list", "/sheets/" + id, "/reminders", "/my-notices", "/hand-off");
        page.navigate(address("/sheets/" + id));
        assertThat(page.locator(".focus")).containsText("Lamellar dissection");
        page.locator(".focus a").first().click();
        assertThat(page.locator("#step-TF09")).isInViewport();
        context.close();

        open(PHONE, ColorScheme.LIGHT, here.trainee());
        String caseHref = "/cases/" + read(id).caseId();
        page.navigate(address(caseHref + "/hand-off"));
        page.getByText("Show a code").click();
        assertThat(page.locator(".code")).hasText(Pattern.compile("[A-Z0-9]{4}-[A-Z0-9]{4}"));
        Axe.assertNoViolations(page);
        shot("hand-off-code");
        look("trainee", "/list", "/cases/plan", caseHref + "/goal");
    }

    private void look(String name, String... paths) {
        for (String path : paths) {
            page.navigate(address(path));
            openEverything();
            Axe.assertNoViolations(page);
            Object wide = page.evaluate("() => document.documentElement.scrollWidth > window.innerWidth");
            assertThat(wide).as("%s is wider than the window", path).isEqualTo(false);
            shot(name + path.replaceAll("[0-9a-f-]{36}", "id").replace('/', '-'));
        }
    }

    private void history() {
        for (int n = 0; n < 4; n++) {
            history.signed(
                    here.organisation(),
                    here.trainee(),
                    second,
                    now().minus(Duration.ofDays(30 + n)),
                    Map.of("TF09", 2, "TF12", 3, "TF16", 2));
        }
    }

    private void plan(String reference) {
        LocalDate tomorrow = LocalDate.ofInstant(now(), ZoneOffset.UTC).plusDays(1);
        here.organisation().in(() -> {
            UUID id = cases.log(
                            here.trainee(),
                            here.entry(reference, null)
                                    .plannedOn(tomorrow)
                                    .factors("SCARRED", "YOUNG")
                                    .done())
                    .orThrow()
                    .id();
            return changes.setGoal(here.trainee(), id, "Even flap thickness").orThrow();
        });
    }

    private UUID sheet() {
        return here.organisation().in(() -> {
            cases.log(
                            here.trainee(),
                            here.entry("K7-399", now().minusSeconds(600)).done())
                    .orThrow();
            return sheets.toScore(here.supervisor().personId()).get(0).sheetId();
        });
    }

    private Sheet read(UUID id) {
        return here.organisation().in(() -> sheets.get(id));
    }

    private static Instant now() {
        return Clock.systemUTC().instant();
    }

    private void openEverything() {
        page.evaluate("() => document.querySelectorAll('details').forEach(part => part.open = true)");
    }

    private void open(int width, ColorScheme scheme, SignedIn who) {
        context = Chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(width, 800)
                        .setColorScheme(scheme));
        page = context.newPage();
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(Pattern.compile("/(to-score|my-cases)$"));
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }

    private void shot(String name) {
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            page.screenshot(
                    new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of(directory, "day-" + name + ".png")));
        }
    }

    private static void keep(byte[] pdf) throws IOException {
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            java.nio.file.Files.write(Path.of(directory, "list.pdf"), pdf);
        }
    }
}
