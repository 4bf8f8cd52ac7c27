package org.scrubline.casework.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Cases;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** A trainee logs a case in a browser, against the running application. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class LoggingIT {

    private static final int PHONE = 360;
    private static final int PHONE_HEIGHT = 640;

    @LocalServerPort
    private int port;

    @Autowired
    private Cases cases;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;
    private BrowserContext context;
    private Page page;

    @BeforeEach
    void logInOnAPhone() {
        here = TestProgramme.open(organisations.open(), rubrics);
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(PHONE, PHONE_HEIGHT));
        page = context.newPage();
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(here.trainee().username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL("**/my-cases");
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void aPlainCaseIsLoggedWithSixAnswersAndNothingTyped() {
        page.getByText("Log a case").first().click();
        page.waitForURL("**/cases/new");
        page.locator("select[name=procedure]").selectOption(Procedures.TRAB_FORNIX);
        page.getByText("right eye").click();
        page.locator("select[name=supervisor]")
                .selectOption(here.supervisor().personId().toString());
        page.getByText("supervisor scrubbed").click();
        page.getByText("did the whole case").click();
        page.getByText("Log this case").click();
        page.waitForURL("**/cases/*-*");

        assertThat(page.locator(".flash")).containsText("is logged and waits for its score. Complexity band A.");
        assertThat(here.organisation().in(() -> cases.ofTrainee(here.trainee().personId())))
                .hasSize(1);
    }

    @Test
    void theTimeFieldSendsWhatTheServerReads() {
        page.navigate(address("/cases/new"));
        page.locator("input[name=endedAt]").fill("2026-03-12T18:40");
        page.getByText("Log this case").click();

        assertThat(page.locator(".error-summary")).containsText("Choose the procedure.");
        assertThat(page.locator("input[name=endedAt]")).hasValue("2026-03-12T18:40");
        assertThat(page.locator("#endedAt-error")).hasCount(0);
    }

    @Test
    void everyCasePageIsAccessibleOnAPhoneInBothThemes() {
        UUID logged = here.organisation()
                .in(() -> cases.log(
                                here.trainee(),
                                here.entry("K7-204", java.time.Instant.now())
                                        .factors("SCARRED")
                                        .done())
                        .orThrow()
                        .id());
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            for (String path : List.of("", "/self-score", "/hand-on", "/trainees", "/abandon", "/end")) {
                check("/cases/" + logged + path, "case" + path.replace('/', '-') + "-" + scheme);
            }
            check("/cases/new", "new-" + scheme);
            check("/cases/plan", "plan-" + scheme);
            check("/my-cases", "my-cases-" + scheme);
        }
        page.navigate(address("/cases/new"));
        page.locator("input[name=reference]").fill("K7-204");
        page.getByText("Log this case").click();
        Axe.assertNoViolations(page);
        shot("new-refused");
    }

    private void check(String path, String name) {
        page.navigate(address(path));
        Axe.assertNoViolations(page);
        assertThat(page.evaluate("document.documentElement.scrollWidth"))
                .as("%s does not scroll sideways", path)
                .isEqualTo(PHONE);
        shot(name);
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }

    private void shot(String name) {
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setFullPage(true)
                    .setPath(Path.of(directory, "logging-" + name + ".png")));
        }
    }
}
