package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState.Scored;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * Every way a network, a server, a browser or a device is known to fail, once each, in a real browser against the real
 * server: no tap is lost, doubled or changed.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class FailureMatrixIT {

    @LocalServerPort
    int port;

    @Autowired
    Sheets sheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    RubricLibrary library;

    Theatre theatre;
    UUID id;
    Wire wire;
    Assessor assessor;
    final List<BrowserContext> contexts = new ArrayList<>();

    @BeforeEach
    void aSheetOnADevice() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        wire = new Wire(port);
        assessor =
                device().logIn(theatre.supervisor()).setUp(Assessor.PHRASE, 1).openTheSheet();
    }

    @AfterEach
    void close() {
        contexts.forEach(BrowserContext::close);
        wire.close();
    }

    @ParameterizedTest
    @EnumSource(Wire.Fault.class)
    void aTapWhoseRequestOrAnswerGoesAstrayIsAppliedOnce(Wire.Fault fault) {
        wire.next(fault, "/taps", 2);
        recordBleeding();
        assessor.answer("TF01", "4").sees("TF01", "saved");
        assertThat(read().events()).hasSize(1);
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
        assertThat(read().lockVersion()).isEqualTo(2);
        assertThat(assessor.stored("taps")).isZero();
    }

    @Test
    void aReceiptThatIsNoneLeavesTheTapOnTheDevice() {
        wire.next(Wire.Fault.CAPTIVE, "/receipt", 1);
        assessor.answer("TF01", "4").sees("TF01", "sent");
        assertThat(assessor.stored("taps")).isEqualTo(1);
        assessor.answer("TF02", "4").sees("TF02", "saved").sees("TF01", "saved");
        assertThat(assessor.stored("taps")).isZero();
    }

    @Test
    void aSheetFetchedAnewThatComesAfterATapTakesNothingBack() {
        Wire.Held held = wire.hold("/package");
        long before = wire.count("/signing");
        Page page = assessor.page();
        page.evaluate("() => dispatchEvent(new Event('online'))");
        held.awaitAnswer();
        assessor.answer("TF01", "4").sees("TF01", "saved");
        held.letGo();
        page.waitForCondition(() -> wire.count("/signing") > before);
        page.waitForTimeout(500);
        assessor.answer("TF02", "3").sees("TF02", "saved");
        assertThat(read().step("TF02")).isEqualTo(new Scored(3));
        assertThat(assessor.answers()).containsEntry("TF01", "4").containsEntry("TF02", "3");
        assertThat(assessor.stored("taps")).isZero();
    }

    @Test
    void withTheNetworkCutTheVerdictFollowsAndAColdStartFindsEveryTap() {
        wire.cut();
        recordTakeover();
        assessor.answer("TF01", "4").sees("TF01", "kept");
        assertThat(assessor.page().locator(".verdict-bar .verdict")).containsText("not yet safe");
        Map<String, String> before = assessor.answers();
        Assessor again = assessor.anotherTab().come().unlock(Assessor.PHRASE);
        assertThat(again.page().locator("#said")).containsText("No connection");
        again.openTheSheet();
        assertThat(again.answers()).isEqualTo(before).hasSizeGreaterThan(2);
        wire.mend();
        again.answer("TF02", "5").sees("TF02", "saved");
        assertThat(read().events()).hasSize(1);
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void aLogInThatEndedInMidQueueIsWaitedFor() {
        contexts.get(0).clearCookies();
        assessor.answer("TF01", "4").answer("TF02", "3").sees("TF01", "kept").sees("TF02", "kept");
        assertThat(assessor.page().locator(".unsaved")).containsText("logged out");
        assessor.anotherTab().logIn(theatre.supervisor());
        assessor.sees("TF02", "saved");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
        assertThat(read().step("TF02")).isEqualTo(new Scored(3));
    }

    @Test
    void aTokenThatWentStaleIsRenewedInTheSameBreath() {
        assessor.anotherTab().logIn(theatre.supervisor());
        assessor.answer("TF01", "4").sees("TF01", "saved");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void aRubricPublishedMeanwhileLeavesTheOpenSheetItsVersion() {
        wire.cut();
        assessor.answer("TF01", "4").sees("TF01", "kept");
        Rubric shipped = library.rubric(Procedures.TRAB_FORNIX);
        UUID before = read().rubricVersionId();
        UUID newer = fixture.publish(
                theatre,
                new Rubric(
                        shipped.procedure(),
                        "9.0",
                        shipped.title(),
                        shipped.family(),
                        shipped.steps().subList(0, 10)));
        wire.mend();
        assessor.sees("TF01", "saved");
        assertThat(read().rubricVersionId()).isEqualTo(before).isNotEqualTo(newer);
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void aTapKeptByAnOlderPageGoesOutFromThisOne() {
        wire.cut();
        keepTap(1, Map.of("fields", Map.of("step.TF03", "2"), "state", "waiting"));
        wire.mend();
        assessor.come();
        assessor.page().reload();
        assessor.openTheSheet().sees("TF03", "saved");
        assertThat(read().step("TF03")).isEqualTo(new Scored(2));
    }

    @Test
    void aTapKeptByANewerPageIsLeftAloneAndSaid() {
        wire.cut();
        keepTap(99, Map.of("unheardOf", true));
        wire.mend();
        assessor.come();
        assertThat(assessor.page().locator("#said")).containsText("newer version");
        assertThat(assessor.stored("taps")).isEqualTo(1);
    }

    @Test
    void withNoRoomOnTheDeviceTheTapIsSaidToBeOnThePageOnlyAndGoesOut() {
        fullDisk();
        assessor.answer("TF01", "4");
        assessor.sees("TF01", "saved");
        wire.cut();
        assessor.answer("TF02", "4");
        assertThat(assessor.page().locator(".unsaved")).containsText("no room left");
        assessor.sees("TF02", "waiting");
        assertThat(assessor.stored("taps")).isZero();
        wire.mend();
        assessor.sees("TF02", "saved");
        assertThat(read().step("TF02")).isEqualTo(new Scored(4));
    }

    @Test
    void twoTabsShareOneQueue() {
        Assessor second = assessor.anotherTab().come().unlock(Assessor.PHRASE).openTheSheet();
        wire.cut();
        assessor.answer("TF01", "4").sees("TF01", "kept");
        second.answer("TF02", "3").sees("TF02", "kept");
        assessor.answer("TF03", "5").sees("TF03", "kept");
        wire.mend();
        assessor.sees("TF01", "saved");
        assessor.page().waitForCondition(() -> assessor.stored("taps") == 0);
        assertThat(List.of(read().step("TF01"), read().step("TF02"), read().step("TF03")))
                .containsExactly(new Scored(4), new Scored(3), new Scored(5));
        assertThat(read().lockVersion()).isEqualTo(3);
    }

    @Test
    void ofTwoDevicesTheSecondIsAskedWhichGoesOn() {
        wire.cut();
        assessor.answer("TF01", "4").sees("TF01", "kept");
        change(new SheetChange.SetStep("TF01", new Scored(2)));
        wire.mend();
        assessor.sees("TF01", "refused");
        assertThat(assessor.page().locator(".unsaved")).containsText("yours 4, stored 2");
        assertThat(assessor.stored("taps")).isEqualTo(1);
        assertThat(read().step("TF01")).isEqualTo(new Scored(2));
        assessor.page().getByText("Put mine on the current sheet").click();
        assessor.sees("TF01", "saved");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @ParameterizedTest
    @ValueSource(strings = {"-P1D", "P1D", "-P365D", "P365D"})
    void aWrongClockLosesNothing(String off) {
        assessor.page()
                .clock()
                .setSystemTime(Instant.now().plus(Duration.parse(off)).toEpochMilli());
        // A clock that jumps says that nobody was here for long, so the page locks itself.
        assertThat(assessor.page().locator("#lock-phrase")).isVisible();
        assessor.unlock(Assessor.PHRASE).unfold();
        assessor.answer("TF01", "4").sees("TF01", "saved");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void onASharedDeviceTheNextPersonSeesAndSendsNothingOfTheFirst() {
        wire.cut();
        assessor.answer("TF01", "4").sees("TF01", "kept");
        wire.mend();
        contexts.get(0).clearCookies();
        SignedIn other = theatre.organisation().join("Corisande Delmarr", Role.SUPERVISOR);
        Assessor next = assessor.anotherTab().logIn(other).setUp("another phrase", 0);
        assertThat(next.page().locator("#no-sheets")).isVisible();
        assertThat(assessor.page().locator(".unsaved")).containsText("logged out");
        assertThat(read().steps()).isEmpty();
        assertThat(assessor.stored("taps")).isEqualTo(1);
        contexts.get(0).clearCookies();
        next.logIn(theatre.supervisor());
        assessor.sees("TF01", "saved");
        assertThat(read().step("TF01")).isEqualTo(new Scored(4));
    }

    @Test
    void aWrongPhraseOpensNothingAndSlowsDown() {
        Assessor next = assessor.anotherTab().come();
        for (int i = 0; i < 3; i++) {
            next.unlock("wrong phrase " + i);
            assertThat(next.page().locator("main:not(#table) [role=alert]")).containsText("not the phrase");
        }
        assertThat(next.page().locator("main:not(#table) [role=alert]")).containsText("seconds");
        assertThat(next.page().locator("#sheets li")).hasCount(0);
    }

    @Test
    void nothingReadableLiesOnTheDevice() {
        wire.cut();
        assessor.page().locator("#strength").fill("Calm hands throughout.");
        assessor.page().locator("#strength").blur();
        assertThat(assessor.page().locator(".feedback .save-state").first()).hasAttribute("data-state", "kept");
        Object text = assessor.page().evaluate("""
                async () => {
                  const database = await new Promise((resolve) => {
                    const request = indexedDB.open("scrubline");
                    request.onsuccess = () => resolve(request.result);
                  });
                  const records = [];
                  for (const name of database.objectStoreNames) {
                    records.push(await new Promise((resolve) => {
                      const all = database.transaction(name).objectStore(name).getAll();
                      all.onsuccess = () => resolve(all.result);
                    }));
                  }
                  const decoder = new TextDecoder();
                  return JSON.stringify(records, (key, value) => (value instanceof Uint8Array ? decoder.decode(value) : value));
                }
                """);
        assertThat(String.valueOf(text))
                .contains(id.toString())
                .doesNotContain("Calm", "Hallinor", "Verrin", "strength", "Plan and ready");
        Object cached = assessor.page().evaluate("""
                async () => {
                  const texts = [];
                  for (const name of await caches.keys()) {
                    for (const request of await (await caches.open(name)).keys()) {
                      texts.push(request.url);
                      if (!/\\.(js|css|svg)$/.test(request.url)) {
                        texts.push(await (await (await caches.open(name)).match(request)).text());
                      }
                    }
                  }
                  return texts.join("\\n");
                }
                """);
        assertThat(String.valueOf(cached))
                .contains("/at-the-table", "/offline/table.js")
                .doesNotContain("/sheets/", "Hallinor", "Verrin", "csrf-token");
    }

    private Assessor device() {
        BrowserContext context =
                Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 640));
        contexts.add(context);
        return new Assessor(wire, context);
    }

    private void recordBleeding() {
        event("Bleeding beyond usual", null);
    }

    private void recordTakeover() {
        event("Takeover by", "for safety");
    }

    private void event(String what, @org.jspecify.annotations.Nullable String why) {
        Page page = assessor.page();
        chip(page, what);
        if (why != null) {
            chip(page, why);
        }
        page.locator(".places button")
                .filter(new com.microsoft.playwright.Locator.FilterOptions().setHasText("Conjunctival opening"))
                .click();
        assertThat(page.locator("#events .save-state")).not().hasAttribute("data-state", "saving");
    }

    private static void chip(Page page, String text) {
        page.locator(".chips label")
                .filter(new com.microsoft.playwright.Locator.FilterOptions().setHasText(text))
                .click();
    }

    /** Seals a tap on the device in some form of its own, as a page of another version would have. */
    private void keepTap(int format, Map<String, Object> tap) {
        assessor.page().evaluate("""
                async ([sheet, format, tap]) => {
                  const at = [...document.scripts].find((script) => script.src.includes("/offline/")).src.replace(/[^/]+$/, "");
                  const { stillOpen } = await import(`${at}vault.js`);
                  const { seal } = await import(`${at}seal.js`);
                  const { open, write } = await import(`${at}database.js`);
                  const { person, key } = await stillOpen();
                  const id = "00000000-0000-4000-8000-0000000000aa";
                  const sealed = await seal(key, `${person} ${id}`, { id, sheet, ...tap });
                  await write(await open(), ["taps"], ({ taps }) => taps.add({ person, format, sheet, id, ...sealed }));
                }
                """, List.of(id.toString(), format, tap));
    }

    /** What the browser says when the disk is full, said by its database for every write from now on. */
    private void fullDisk() {
        assessor.page().evaluate("""
                () => ["add", "put"].forEach((name) => {
                  IDBObjectStore.prototype[name] = () => { throw new DOMException("full", "QuotaExceededError"); };
                })
                """);
    }

    private Sheet read() {
        return theatre.organisation().in(() -> sheets.get(id));
    }

    private void change(SheetChange change) {
        theatre.organisation()
                .in(() -> sheets.change(theatre.supervisor(), id, read().lockVersion(), change)
                        .orThrow());
    }
}
