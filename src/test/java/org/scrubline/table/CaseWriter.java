package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import org.scrubline.casework.TestProgramme;
import org.scrubline.rubric.Procedures;

/** A trainee with a browser at the table, logging cases. */
final class CaseWriter {

    private static final LocatorAssertions.HasCountOptions SOON =
            new LocatorAssertions.HasCountOptions().setTimeout(30_000);

    private final Assessor device;
    private final TestProgramme here;

    CaseWriter(Assessor device, TestProgramme here) {
        this.device = device;
        this.here = here;
    }

    Page page() {
        return device.page();
    }

    Assessor device() {
        return device;
    }

    CaseWriter setUp() {
        device.setUp(Assessor.PHRASE, 0);
        // The form and the steps of every procedure.
        int everything = 1 + Procedures.ALL.size();
        page().waitForCondition(() -> device.stored("cases") == everything);
        assertThat(page().locator("#case-new a")).isVisible();
        return this;
    }

    /** Another tab of the same browser, opened with the phrase. */
    CaseWriter anotherTab() {
        return new CaseWriter(device.anotherTab().come().unlock(Assessor.PHRASE), here);
    }

    CaseWriter begin() {
        page().locator("#case-new a").first().click();
        assertThat(form()).isVisible();
        return this;
    }

    /** A plain case: the reference, the site and the end are there already. */
    CaseWriter answerAll() {
        page().locator("#procedure").selectOption(Procedures.TRAB_FORNIX);
        choose("eye", "RIGHT");
        page().locator("#supervisor").selectOption(here.supervisor().personId().toString());
        choose("plannedSupervision", "SCRUBBED");
        choose("claimedPart", "WHOLE_CASE");
        return this;
    }

    CaseWriter reference(String reference) {
        page().locator("#reference").fill(reference);
        return this;
    }

    CaseWriter level(String step, int level) {
        page().evaluate(
                        "() => document.querySelectorAll('#level-steps details.phase').forEach(one => one.open = true)");
        choose("level." + step, String.valueOf(level));
        return this;
    }

    private void choose(String name, String value) {
        page().locator("label:has(> input[name='" + name + "'][value='" + value + "'])")
                .click();
    }

    CaseWriter keep() {
        form().locator(".button-main").click();
        return this;
    }

    /** The id of the case that is open. */
    String open() {
        return String.valueOf(page().evaluate("() => location.hash.slice(6, 42)"));
    }

    CaseWriter sees(String state, int times) {
        assertThat(page().locator("#case-list [data-state=" + state + "]")).hasCount(times, SOON);
        return this;
    }

    /** Tries again at once, as when the network comes back. */
    CaseWriter retry() {
        page().evaluate("() => dispatchEvent(new Event('online'))");
        return this;
    }

    /** Waits until what was typed lies on the device. */
    CaseWriter seesDraftKept() {
        assertThat(page().locator("#draft-kept")).isVisible();
        page().waitForCondition(() -> items() > 0);
        return this;
    }

    Locator form() {
        return page().locator("#case-place form");
    }

    /** Cases of anybody on this device that the server has not confirmed. */
    int items() {
        return ((Number) page().evaluate("""
                () => new Promise((resolve, reject) => {
                  const request = indexedDB.open("scrubline");
                  request.onerror = () => reject(request.error);
                  request.onsuccess = () => {
                    const all = request.result.transaction("cases").objectStore("cases").getAll();
                    all.onsuccess = () => {
                      request.result.close();
                      resolve(all.result.filter(({ place }) => place.startsWith("item ")).length);
                    };
                  };
                })
                """)).intValue();
    }
}
