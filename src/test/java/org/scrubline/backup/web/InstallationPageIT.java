package org.scrubline.backup.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** The administrator's page in a browser: with an old backup and jobs, and with neither. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"spring.datasource.url=test", "scrubline.jobs.enabled=false"})
@Import({TestDatabase.class, TestOrganisations.class})
class InstallationPageIT {

    private static Path backups;

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    JdbcClient jdbc;

    BrowserContext context;
    Page page;

    @DynamicPropertySource
    static void ownBackups(DynamicPropertyRegistry registry) throws IOException {
        backups = Files.createTempDirectory("scrubline-backups");
        registry.add("scrubline.backup.directory", () -> backups.toString());
    }

    @BeforeEach
    void logIn() {
        SignedIn administrator = organisations.open().join("Tarn Oderlake", Role.ADMINISTRATOR);
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 740));
        page = context.newPage();
        page.navigate("http://localhost:" + port + "/login");
        page.locator("input[name=username]").fill(administrator.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(Pattern.compile("^(?!.*/login).*$"));
    }

    @AfterEach
    void close() {
        context.close();
        jdbc.sql("delete from scheduled_tasks where task_name like 'test-%'").update();
    }

    @Test
    void thePageIsAccessibleAndFitsAPhone() throws IOException {
        look("nothing-yet");
        assertThat(page.locator(".notice").innerText()).contains("Nightly backups are off.");
        Files.write(backups.resolve("scrubline-20260105T023000Z.backup"), new byte[1_234_567]);
        jdbc.sql("""
                insert into scheduled_tasks (task_name, task_instance, execution_time, picked, version, last_success,
                    last_failure, consecutive_failures)
                values ('test-nightly-backup', 'recurring', now(), false, 1, now(), null, 0),
                       ('test-population-fit', 'recurring', now(), false, 1, null, now(), 2)
                """).update();
        look("old-backup");
        assertThat(page.locator(".notice").innerText()).contains("The newest backup is old.");
        assertThat(page.locator("main").innerText()).contains("5 Jan 2026, 02:30 UTC", "1 MB", "did not succeed twice");
    }

    private void look(String name) {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            for (int width : List.of(320, 360, 1280)) {
                page.setViewportSize(width, 800);
                page.navigate("http://localhost:" + port + "/health-of-installation");
                Axe.assertNoViolations(page);
                assertThat(page.evaluate("() => document.documentElement.scrollWidth"))
                        .as("%s at %d", name, width)
                        .isEqualTo(width);
                page.screenshot(new Page.ScreenshotOptions()
                        .setFullPage(true)
                        .setPath(Path.of("target", "installation", name + "-" + width + "-" + scheme + ".png")));
            }
        }
    }
}
