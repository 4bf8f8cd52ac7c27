package org.scrubline.ledger.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.ledger.check.EvidenceFixture;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.platform.jobs.QueuedJob;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** The director's page in a browser, in every state. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"spring.datasource.url=test", "scrubline.jobs.enabled=false"})
@Import({TestDatabase.class, TestOrganisations.class, JobsNow.class})
class EvidencePageIT {

    private static final String WIDER =
            "() => document.documentElement.scrollWidth > document.documentElement.clientWidth";

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    JobsNow jobs;

    @Autowired
    @Qualifier("storedEvidenceChecks")
    QueuedJob check;

    @ParameterizedTest
    @CsvSource({"360, LIGHT", "1280, DARK"})
    void thePageIsAccessibleAndFitsTheScreenInEveryState(int width, ColorScheme theme) {
        Evidence evidence = fixture.withoutCheckpoint(organisations);
        SignedIn director = evidence.theatre().organisation().join("Ruda Calloway", Role.DIRECTOR);
        Browser.NewContextOptions options =
                new Browser.NewContextOptions().setViewportSize(width, 800).setColorScheme(theme);
        try (BrowserContext context = Chromium.browser().newContext(options)) {
            Page page = logIn(context, director);
            page.navigate("http://localhost:" + port + "/evidence");
            look(page, "new", width, theme);
            page.getByText("Sign a checkpoint now").click();
            assertThat(page.locator("[role=status]").first().innerText()).contains("covers everything");
            page.getByText("Check everything now").click();
            look(page, "waiting", width, theme);
            jobs.runWaiting(evidence.tenant(), check);
            page.getByText("Look again").click();
            assertThat(page.locator("main").innerText()).contains("Sound: nothing was changed");
            look(page, "checked", width, theme);
        }
    }

    private Page logIn(BrowserContext context, SignedIn who) {
        Page page = context.newPage();
        page.navigate("http://localhost:" + port + "/login");
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(url -> !url.endsWith("/login"));
        return page;
    }

    private static void look(Page page, String name, int width, ColorScheme theme) {
        Axe.assertNoViolations(page);
        assertThat((boolean) page.evaluate(WIDER))
                .as("%s is wider than the screen", name)
                .isFalse();
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of(directory, "evidence-" + name + "-" + width + "-" + theme + ".png"))
                    .setFullPage(true));
        }
    }
}
