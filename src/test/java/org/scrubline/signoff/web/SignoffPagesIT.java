package org.scrubline.signoff.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SelfScores;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** Review, sign, read and remark in a browser, against the running application; no script is needed for any of it. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class SignoffPagesIT {

    private static final String WIDER =
            "() => document.documentElement.scrollWidth > document.documentElement.clientWidth";

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    SelfScores selfScores;

    @Autowired
    Clock clock;

    Theatre theatre;
    BrowserContext context;
    Page page;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void aSheetIsReviewedSignedReadAndRemarkedWithoutScript() {
        UUID sheet = told(clock.instant().minus(Duration.ofHours(80)));
        open(theatre.supervisor(), new Browser.NewContextOptions().setJavaScriptEnabled(false));
        page.navigate(address("/sheets/" + sheet + "/review"));
        page.getByText("The 2 untouched steps were not seen").click();
        assertThat(page.locator("[role=status]").first().innerText()).contains("down as not seen");

        page.locator("input[name=password]").fill("not the password");
        page.locator("main .button-main").click();
        assertThat(page.locator(".error-summary").innerText()).contains("That is not your password");
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL("**/signed/*");
        String record = page.url();
        assertThat(page.locator(".signature").innerText()).contains("Ansel Verrin", "late entry, 3 days");
        context.close();

        open(theatre.trainee(), new Browser.NewContextOptions().setJavaScriptEnabled(false));
        page.navigate(address("/feedback"));
        page.locator(".link-list a").first().click();
        assertThat(page.url()).isEqualTo(record);
        page.locator("#body").fill("The punch slipped.");
        page.locator("form[action$=remarks] button").click();
        assertThat(page.locator(".remark").innerText()).contains("The punch slipped.", "Fenna Hallinor");
    }

    @ParameterizedTest
    @CsvSource({"360, DARK", "1280, LIGHT"})
    void everyPageIsAccessibleAndFitsTheScreen(int width, ColorScheme theme) {
        UUID blank = fixture.blank(theatre, clock.instant().minus(Duration.ofDays(20)));
        UUID sheet = told(clock.instant().minus(Duration.ofHours(80)));
        Browser.NewContextOptions options =
                new Browser.NewContextOptions().setViewportSize(width, 800).setColorScheme(theme);
        open(theatre.supervisor(), options);
        check("/signed", "empty", width, theme);
        check("/sheets/" + blank + "/review", "closed", width, theme);
        check("/sheets/" + sheet + "/review", "open", width, theme);
        page.getByText("The 2 untouched steps were not seen").click();
        check("/sheets/" + sheet + "/review", "ready", width, theme);
        page.locator("input[name=password]").fill("not the password");
        page.locator("main .button-main").click();
        check(null, "wrong", width, theme);
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL("**/signed/*");
        check("/signed", "list", width, theme);
        context.close();

        open(theatre.trainee(), options);
        check("/sheets/" + sheet + "/signed", "record", width, theme);
        page.locator("#body").fill("The punch slipped.");
        page.locator("form[action$=remarks] button").click();
        check(null, "remark", width, theme);
        check("/feedback", "feedback", width, theme);
    }

    /** A sheet with two untouched steps, an event, both sentences and one of the trainee's own levels. */
    private UUID told(Instant ended) {
        UUID sheet = fixture.complete(theatre, ended);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF02", new StepState.Scored(3)));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF03", StepState.blank()));
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF05", StepState.blank()));
        fixture.change(
                theatre,
                sheet,
                new SheetChange.AddEvent("TAKEOVER", "TF12", TakeoverReason.SAFETY, "Took the punch, refilled."));
        fixture.change(theatre, sheet, new SheetChange.SetFeedback("Calm hands.", "Loosen the suture earlier."));
        UUID caseId = fixture.read(theatre, sheet).caseId();
        theatre.organisation()
                .in(() -> selfScores
                        .save(theatre.trainee(), caseId, Map.of("TF01", 3, "TF12", 2))
                        .orThrow());
        return sheet;
    }

    private void open(SignedIn who, Browser.NewContextOptions options) {
        context = Chromium.browser().newContext(options);
        page = context.newPage();
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(url -> !url.endsWith("/login"));
    }

    private void check(@Nullable String path, String name, int width, ColorScheme theme) {
        if (path != null) {
            page.navigate(address(path));
        }
        Axe.assertNoViolations(page);
        assertThat((boolean) page.evaluate(WIDER))
                .as("%s is wider than the screen", name)
                .isFalse();
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of(directory, "signoff-" + name + "-" + width + "-" + theme + ".png"))
                    .setFullPage(true));
        }
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }
}
