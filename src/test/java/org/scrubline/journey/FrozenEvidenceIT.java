package org.scrubline.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.browser.Chromium;

/** Evidence frozen by one server process is made again, word for word, by another one. */
class FrozenEvidenceIT {

    @Test
    void aFreshProcessMakesTheFrozenEvidenceAgain(@TempDir Path directory) {
        String frozen;
        try (ServerProcess server = DemoServer.start(directory);
                BrowserContext context = Chromium.browser().newContext()) {
            frozen = madeAgain(server, context);
        }
        try (ServerProcess server = DemoServer.start(directory);
                BrowserContext context = Chromium.browser().newContext()) {
            assertThat(madeAgain(server, context)).isEqualTo(frozen);
        }
    }

    /** The notice after making the evidence of the first trainee again; it names the hash. */
    private static String madeAgain(ServerProcess server, BrowserContext context) {
        Page page = context.newPage();
        page.navigate(server.address() + "/login");
        page.fill("#username", "quillmere");
        page.fill("#password", DemoServer.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL("**/cohort");
        page.navigate(server.address() + "/meetings");
        page.locator("main .link-list a").first().click();
        page.locator("main a[href*='/trainees/']").first().click();
        page.locator("main a[href$='again=true']").click();
        String notice = page.locator("main .notice[role=status]").innerText();
        assertThat(notice).startsWith("Rebuilt: same.");
        return notice;
    }
}
