package org.scrubline.signoff.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** Settings, release, countersignature and answer in a browser, on every page they have. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class VersionSignaturePagesIT {

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

    @ParameterizedTest
    @CsvSource({"360, DARK", "1280, LIGHT"})
    void aLateSheetIsReleasedSignedCountersignedAndAnswered(int width, ColorScheme theme) {
        Browser.NewContextOptions options =
                new Browser.NewContextOptions().setViewportSize(width, 800).setColorScheme(theme);
        String shot = "-" + width + "-" + theme;
        UUID closed = fixture.complete(theatre, clock.instant().minus(Duration.ofDays(20)));
        SignedIn director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        SignedIn second = theatre.organisation().joinNew("Hesper Vantrelle", Role.SUPERVISOR);

        open(director, options);
        check("/settings", "settings" + shot);
        check("/settings/LATE_AFTER", "setting" + shot);
        check("/open-signatures", "open-signatures" + shot);
        page.locator("main .link-list a").first().click();
        page.locator("#reason").fill("The scorer was on leave.");
        password();
        check(null, "late-release" + shot);
        page.locator("main .button-main").click();
        page.waitForURL("**/open-signatures");
        check(null, "released" + shot);
        context.close();

        open(theatre.supervisor(), options);
        check("/to-score", "to-score" + shot);
        check("/sheets/" + closed + "/review", "review" + shot);
        password();
        page.locator("main .button-main").click();
        page.waitForURL("**/signed/*");
        check(null, "signed" + shot);
        context.close();

        open(second, options);
        check("/to-countersign", "to-countersign" + shot);
        page.locator("main .link-list a").first().click();
        check(null, "statement" + shot);
        page.getByText("I accept this").click();
        password();
        page.getByText("I can’t countersign").click();
        assertThat(page.locator(".error-summary").innerText()).contains("Say why.");
        check(null, "countersign" + shot);
        password();
        page.locator("button[value=COUNTERSIGNED]").click();
        assertThat(page.locator("main").innerText()).contains("I countersign", "Hesper Vantrelle");
        check(null, "countersigned" + shot);
        context.close();

        open(theatre.trainee(), options);
        page.navigate(address("/feedback"));
        page.locator("main .link-list a").first().click();
        page.locator("#words").fill("Clear to me now.");
        password();
        page.locator("button[value=ACKNOWLEDGED]").click();
        assertThat(page.locator("main").innerText())
                .contains("I have read this record", "Clear to me now.", "released by Corisande Delmarr");
        check(null, "answered" + shot);
    }

    private void password() {
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
    }

    private void open(SignedIn who, Browser.NewContextOptions options) {
        context = Chromium.browser().newContext(options);
        page = context.newPage();
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(who.username());
        password();
        page.locator("main button[type=submit]").click();
        page.waitForURL(url -> !url.endsWith("/login"));
    }

    private void check(@Nullable String path, String name) {
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
                    .setPath(Path.of(directory, name + ".png"))
                    .setFullPage(true));
        }
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }
}
