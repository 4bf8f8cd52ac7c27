package org.scrubline.journey;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.browser.Chromium;

/** A power cut in mid-scoring: every tap the page showed as saved is there, and the server starts by itself. */
class KilledServerIT {

    private static final List<Integer> CUTS = List.of(7, 19);

    @Test
    void everyTapShownAsSavedOutlivesAKilledServer(@TempDir Path directory) {
        ServerProcess server = DemoServer.start(directory);
        try {
            Map<String, String> tapped = new TreeMap<>();
            String sheet = "";
            for (int cut : CUTS) {
                try (BrowserContext context = Chromium.browser().newContext()) {
                    Page page = openSheet(server, context, sheet);
                    sheet = path(page);
                    assertThat(answers(page))
                            .as("before the cut after tap %d", cut)
                            .isEqualTo(tapped);
                    tapUntil(page, cut, tapped);
                    server.kill();
                }
                server = DemoServer.start(directory);
            }
            try (BrowserContext context = Chromium.browser().newContext()) {
                assertThat(answers(openSheet(server, context, sheet))).isEqualTo(tapped);
            }
            assertThat(tapped).hasSize(19);
        } finally {
            server.close();
        }
    }

    private static Page openSheet(ServerProcess server, BrowserContext context, String sheet) {
        Page page = context.newPage();
        page.navigate(server.address() + "/login");
        page.fill("#username", "brannock");
        page.fill("#password", DemoServer.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL("**/to-score");
        if (sheet.isEmpty()) {
            page.locator("main a[href*='/sheets/']").first().click();
        } else {
            page.navigate(server.address() + sheet);
        }
        page.waitForURL("**/sheets/*");
        page.evaluate("() => document.querySelectorAll('details').forEach(part => part.open = true)");
        return page;
    }

    /** Taps further steps, one at a time, each only once the one before is shown as saved. */
    private static void tapUntil(Page page, int count, Map<String, String> tapped) {
        List<String> steps = page.locator("section.step").all().stream()
                .map(step -> step.getAttribute("id").substring("step-".length()))
                .toList();
        for (String step : steps.subList(tapped.size(), count)) {
            String level = String.valueOf(2 + tapped.size() % 4);
            page.locator("label:has(> input[name='step." + step + "'][value='" + level + "'])")
                    .click();
            assertThat(page.locator("#step-" + step + " .save-state")).hasAttribute("data-state", "saved");
            tapped.put(step, level);
        }
    }

    private static Map<String, String> answers(Page page) {
        Map<String, String> answers = new TreeMap<>();
        page.locator("input[name^='step.']:checked")
                .all()
                .forEach(input -> answers.put(
                        input.getAttribute("name").substring("step.".length()), input.getAttribute("value")));
        return answers;
    }

    private static String path(Page page) {
        return page.url().replaceFirst("^http://[^/]+", "");
    }
}
