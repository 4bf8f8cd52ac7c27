package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.TestOrganisations;

/** A person with a browser at the table. */
final class Assessor {

    static final String PHRASE = "calm blue hands";

    private static final LocatorAssertions.HasAttributeOptions SOON =
            new LocatorAssertions.HasAttributeOptions().setTimeout(30_000);

    private final Wire wire;
    private final BrowserContext context;
    private Page page;

    Assessor(Wire wire, BrowserContext context) {
        this.wire = wire;
        this.context = context;
        this.page = context.newPage();
    }

    Page page() {
        return page;
    }

    /** Another tab of the same browser. */
    Assessor anotherTab() {
        return new Assessor(wire, context);
    }

    Assessor logIn(SignedIn who) {
        page.navigate(wire.address("/login"));
        page.locator("#username").fill(who.username());
        page.locator("#password").fill(TestOrganisations.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL(Pattern.compile("/(to-score|my-cases|)$"));
        return this;
    }

    /** Opens the page at the table for the first time on this device and waits for the sheets to arrive. */
    Assessor setUp(String phrase, int sheets) {
        page.navigate(wire.address("/at-the-table"));
        page.locator("#set-up input[name=phrase]").fill(phrase);
        page.locator("#set-up input[name=again]").fill(phrase);
        page.locator("#set-up button[type=submit]").click();
        assertThat(page.locator("#work")).isVisible(new LocatorAssertions.IsVisibleOptions().setTimeout(30_000));
        assertThat(page.locator("#sheets li"))
                .hasCount(sheets, new LocatorAssertions.HasCountOptions().setTimeout(30_000));
        assertThat(page.locator("#said")).isHidden();
        page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        return this;
    }

    Assessor come() {
        page.navigate(wire.address("/at-the-table"));
        return this;
    }

    Assessor unlock(String phrase) {
        page.locator("#lock-phrase").fill(phrase);
        page.locator("#lock-phrase").press("Enter");
        return this;
    }

    Assessor openTheSheet() {
        page.locator("#sheets a").first().click();
        return unfold();
    }

    Assessor unfold() {
        assertThat(page.locator("#sheet")).isVisible();
        assertThat(page.locator("#sheet .save")).isHidden(new LocatorAssertions.IsHiddenOptions().setTimeout(30_000));
        page.evaluate("() => document.querySelectorAll('details').forEach(part => part.open = true)");
        return this;
    }

    Assessor answer(String step, String value) {
        page.locator("label:has(> input[name='step." + step + "'][value='" + value + "'])")
                .click();
        return this;
    }

    Locator mark(String step) {
        return page.locator("#step-" + step + " .save-state");
    }

    /** Waits until the state of the step's tap is this; patiently, since a retry waits longer each time. */
    Assessor sees(String step, String state) {
        assertThat(mark(step)).hasAttribute("data-state", state, SOON);
        return this;
    }

    Map<String, String> answers() {
        Map<String, String> answers = new TreeMap<>();
        page.locator("input[name^='step.']:checked")
                .all()
                .forEach(input -> answers.put(
                        input.getAttribute("name").substring("step.".length()), input.getAttribute("value")));
        return answers;
    }

    /** As {@code count(store)} of the device's database. */
    int stored(String store) {
        return ((Number) page.evaluate("""
                (store) => new Promise((resolve, reject) => {
                  const request = indexedDB.open("scrubline");
                  request.onerror = () => reject(request.error);
                  request.onsuccess = () => {
                    const count = request.result.transaction(store).objectStore(store).count();
                    count.onsuccess = () => { request.result.close(); resolve(count.result); };
                  };
                })
                """, store)).intValue();
    }

    void close() {
        context.close();
    }
}
