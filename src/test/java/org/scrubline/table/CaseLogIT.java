package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Cases;
import org.scrubline.casework.DeviceCases;
import org.scrubline.casework.SelfScores;
import org.scrubline.casework.TestProgramme;
import org.scrubline.casework.TraineeCase;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.ComplexityFactor;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * A trainee logs cases at the table: every way a network, a log-in or a device is known to fail, once each, in a real
 * browser against the real server. No case is lost, doubled or changed.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class CaseLogIT {

    private static final String POST = "/at-the-table/cases";

    @LocalServerPort
    int port;

    @Autowired
    Cases cases;

    @Autowired
    DeviceCases intake;

    @Autowired
    SelfScores selfScores;

    @Autowired
    Rubrics rubrics;

    @Autowired
    RubricLibrary library;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;
    Wire wire;
    BrowserContext context;
    CaseWriter writer;

    @BeforeEach
    void aTraineeWithADevice() {
        here = TestProgramme.open(organisations.open(), rubrics);
        wire = new Wire(port);
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(320, 640));
        writer = new CaseWriter(new Assessor(wire, context).logIn(here.trainee()), here).setUp();
    }

    @AfterEach
    void close() {
        context.close();
        wire.close();
    }

    @Test
    void withTheNetworkCutACaseWithItsLevelsIsKeptAndReceivedOnceItIsBack() {
        wire.cut();
        writer.begin()
                .answerAll()
                .reference("k7-204")
                .level("TF01", 3)
                .level("TF02", 5)
                .keep();
        writer.sees("waiting", 1);
        assertThat(writer.items()).isEqualTo(1);
        assertThat(logged()).isEmpty();
        wire.mend();
        writer.retry().sees("received", 1);
        assertThat(writer.page().locator("#case-list")).containsText("received as K7-204");
        check();
        assertThat(writer.items()).isZero();
        UUID id = logged().get(0).surgicalCase().id();
        assertThat(in(() -> selfScores.of(id, here.trainee().personId()))).isEqualTo(Map.of("TF01", 3, "TF02", 5));
        assertThat(in(() -> cases.open(here.supervisor(), id)).requests()).hasSize(1);
    }

    /** All factors one after the other: every band is passed, and a trainee without cases hears about the harder two. */
    @Test
    void theBandOfACaseIsSaidWithoutANetwork() {
        wire.cut();
        writer.begin().answerAll();
        List<String> ticked = new ArrayList<>();
        for (ComplexityFactor factor : library.complexity().factors()) {
            writer.page()
                    .locator("input[name=factors][value='" + factor.code() + "']")
                    .check();
            ticked.add(factor.code());
            Band band = library.complexity().band(ticked);
            assertThat(writer.page().locator("#band")).containsText("Complexity band " + band + ".");
            if (band.compareTo(Band.B) > 0) {
                assertThat(writer.page().locator("#band")).containsText("The first 10 cases");
            } else {
                assertThat(writer.page().locator("#band")).not().containsText("The first 10 cases");
            }
        }
        check();
    }

    @Test
    void aCaseWhoseRequestAnswerOrReceiptGoesAstrayIsEnteredOnce() {
        wire.cut();
        String id = writer.begin().answerAll().open();
        writer.keep().sees("waiting", 1);
        // A browser may ask again by itself when a connection breaks, so each trouble comes twice.
        for (Wire.Fault fault : Wire.Fault.values()) {
            wire.next(fault, POST, 2);
        }
        long before = wire.count(POST);
        wire.next(Wire.Fault.CAPTIVE, POST + "/" + id, 2);
        wire.mend();
        writer.page().waitForCondition(() -> {
            writer.retry();
            return wire.count(POST) > before + 8;
        });
        writer.sees("sent", 1);
        assertThat(writer.items()).isEqualTo(1);
        writer.retry().sees("received", 1);
        assertThat(writer.items()).isZero();
        assertThat(logged()).hasSize(1);
        assertThat(in(() -> intake.receipts(here.trainee(), UUID.fromString(id))))
                .hasSize(1);
    }

    @Test
    void aLogInThatEndedInMidQueueIsWaitedFor() {
        writer.begin().answerAll();
        context.clearCookies();
        writer.keep().sees("waiting", 1);
        writer.begin().answerAll().keep().sees("waiting", 2);
        assertThat(logged()).isEmpty();
        writer.device().anotherTab().logIn(here.trainee());
        writer.retry().sees("received", 2);
        assertThat(logged()).hasSize(2);
    }

    @Test
    void halfATypedCaseSurvivesALockAReloadAndAnotherTab() {
        wire.cut();
        writer.begin().answerAll().level("TF01", 4).reference("K7").seesDraftKept();
        writer.page().reload();
        assertThat(writer.page().locator("#reference")).hasValue("K7");
        assertThat(writer.page().locator("input[name='level.TF01'][value='4']")).isChecked();
        writer.page().evaluate("() => sessionStorage.clear()");
        assertThat(writer.page().locator("#lock-phrase")).isVisible();
        assertThat(writer.page().locator("body")).not().containsText("K7");
        writer.device().unlock(Assessor.PHRASE);
        assertThat(writer.page().locator("#reference")).hasValue("K7");
        writer.keep();
        assertThat(writer.page().locator("#reference-error")).containsText("a letter, a digit");
        CaseWriter second = writer.anotherTab();
        second.page().locator("#case-list a").click();
        assertThat(second.page().locator("#reference")).hasValue("K7");
        writer.reference("K7-204").keep().sees("waiting", 1);
        second.reference("K7-999");
        second.sees("waiting", 1);
        wire.mend();
        writer.retry().sees("received", 1);
        second.sees("received", 1);
        assertThat(logged())
                .singleElement()
                .satisfies(one -> assertThat(one.surgicalCase().reference()).isEqualTo("K7-204"));
    }

    @Test
    void aCaseTheServerRefusesIsMendedBesideItsFieldAndKeptAgain() {
        in(() -> cases.log(
                        here.trainee(),
                        here.entry("K7-204", Instant.now().minusSeconds(9_000)).done())
                .orThrow());
        writer.begin().answerAll().reference("K7-204").keep().sees("refused", 1);
        check();
        assertThat(writer.items()).isEqualTo(1);
        writer.page().locator("#case-list a").click();
        assertThat(writer.page().locator(".error-summary")).containsText("belongs to another case");
        assertThat(writer.page().locator("#reference-error")).containsText("belongs to another case");
        assertThat(writer.page().locator("input[name=claimedPart][value=WHOLE_CASE]"))
                .isChecked();
        writer.reference("K7-205").keep().sees("received", 1);
        assertThat(logged()).hasSize(2);
        assertThat(writer.items()).isZero();
    }

    @Test
    void anotherContentUnderTheSameIdAndAnEndStillToComeWaitForTheTrainee() {
        wire.next(Wire.Fault.ANSWER_LOST, POST, 2);
        writer.begin().answerAll();
        String id = writer.open();
        writer.keep();
        writer.page().waitForCondition(() -> logged().size() == 1);
        changeOnTheDevice(id);
        writer.retry().sees("aside", 1);
        check();
        assertThat(writer.items()).isZero();
        writer.begin().answerAll();
        writer.page().locator("#endedAt").fill("2090-01-01T10:00");
        writer.keep().sees("aside", 2);
        assertThat(logged()).hasSize(1);
        writer.page().navigate(wire.address("/my-cases"));
        assertThat(writer.page().locator("#asides + ul li")).hasCount(2);
        writer.page().locator("#asides + ul a").last().click();
        assertThat(writer.page().locator(".notice")).containsText("later than the server");
        check();
        writer.page().locator("#endedAt").fill("2026-03-12T18:40");
        writer.page().getByText("Log this case").click();
        assertThat(writer.page().locator(".flash")).containsText("is logged");
        assertThat(logged()).hasSize(2);
    }

    @Test
    void loggingOutWithAnUnsentCaseIsWarnedAboutAndTheNextPersonSeesNothingOfIt() {
        wire.cut();
        writer.begin().answerAll().reference("K7-204").keep().sees("waiting", 1);
        wire.next(Wire.Fault.LOST, POST, 50);
        wire.mend();
        Page page = writer.device().anotherTab().page();
        page.navigate(wire.address("/my-cases"));
        assertThat(page.locator(".who form")).hasAttribute("data-unsent", "1");
        page.getByText("Log out").click();
        assertThat(page.locator(".who [role=alert]")).containsText("have not reached the server");
        Response left = page.waitForResponse(
                "**/logout", () -> page.locator(".who form button").click());
        assertThat(left.headerValue("Clear-Site-Data")).isEqualTo("\"cache\"");
        page.waitForURL("**/login?left");
        assertThat(writer.items()).as("what waits here outlives log-out").isEqualTo(1);
        wire.cut();
        page.navigate(wire.address("/at-the-table"));
        assertThat(page.locator("h1").first()).hasText("At the table");
        wire.mend();
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);
        Assessor next = writer.device().anotherTab().logIn(peer).setUp("another phrase", 0);
        assertThat(next.page().locator("#no-cases")).isVisible();
        assertThat(next.page().locator("#case-list li")).hasCount(0);
        next.page().navigate(wire.address("/my-cases"));
        assertThat(next.page().locator(".who form")).hasAttribute("data-unsent", "0");
        next.page().getByText("Log out").click();
        next.page().waitForURL("**/login?left");
        assertThat(in(() -> cases.ofTrainee(peer.personId()))).isEmpty();
        assertThat(writer.items()).isEqualTo(1);
        assertThat(logged()).isEmpty();
    }

    @Test
    void everyStateIsAccessibleInBothThemesAtThreeHundredAndTwentyAndNothingIsReadable() {
        check();
        wire.cut();
        writer.begin();
        check();
        writer.keep();
        assertThat(writer.page().locator(".error-summary li")).hasCount(5);
        writer.answerAll().level("TF01", 2);
        check();
        writer.reference("Q3-118").keep().sees("waiting", 1);
        writer.begin().reference("Q3-119").seesDraftKept();
        writer.page().getByText("Back to the list").last().click();
        writer.sees("draft", 1).sees("waiting", 1);
        check();
        assertThat(onTheDevice())
                .contains("item ")
                .doesNotContain("Q3-118", "Q3-119", "Hallinor", "Brannock", "WHOLE_CASE", "supervisor");
        writer.page().locator("#case-list a").click();
        writer.page().locator("button[name=remove]").click();
        assertThat(writer.page().locator("button[name=remove]")).containsText("nowhere else");
        writer.page().locator("button[name=remove]").click();
        writer.sees("draft", 0).sees("waiting", 1);
    }

    @Test
    void aTimeTheClockSkippedOrShowedTwiceIsAskedAboutWithoutANetwork() {
        wire.cut();
        writer.begin().answerAll();
        writer.page().locator("#endedAt").fill("2026-03-29T01:30");
        writer.keep();
        assertThat(writer.page().locator("#endedAt-error")).containsText("from 01:00 to 02:00");
        writer.page().locator("#endedAt").fill("2025-10-26T01:30");
        assertThat(writer.page().locator("#endedOffset")).isVisible();
        writer.keep();
        assertThat(writer.page().locator("#endedOffset-error")).containsText("01:30 came twice");
        writer.page().locator("#endedOffset label").last().click();
        writer.keep().sees("waiting", 1);
        wire.mend();
        writer.retry().sees("received", 1);
        assertThat(logged().get(0).surgicalCase().endedAt()).isEqualTo(Instant.parse("2025-10-26T01:30:00Z"));
    }

    /** Against the rules of java.time, which come from the IANA time zone database, around every change of two years. */
    @Test
    void theDeviceReadsTheClocksOfSitesAsTheServerDoes() {
        List<List<String>> times = new ArrayList<>();
        List<List<String>> offsets = new ArrayList<>();
        for (String name : List.of("Europe/London", "America/New_York", "Asia/Kolkata", "Australia/Lord_Howe")) {
            ZoneRules rules = ZoneId.of(name).getRules();
            Instant at = Instant.parse("2025-01-01T00:00:00Z");
            for (int change = 0; change < 4; change++) {
                ZoneOffsetTransition next = rules.nextTransition(at);
                LocalDateTime around =
                        next == null ? LocalDateTime.of(2025, 6, 1 + change, 12, 0) : next.getDateTimeBefore();
                for (int minutes = -90; minutes <= 90; minutes += 15) {
                    LocalDateTime local = around.plusMinutes(minutes);
                    times.add(List.of(local.toString(), name));
                    offsets.add(rules.getValidOffsets(local).stream()
                            .map(ZoneOffset::getId)
                            .toList());
                }
                at = next == null ? at : next.getInstant();
            }
        }
        Object read = writer.page().evaluate("""
                async (times) => {
                  const at = [...document.scripts].find((script) => script.src.includes("/offline/")).src.replace(/[^/]+$/, "");
                  const { readings } = await import(`${at}case-log-end.js`);
                  return times.map(([local, zone]) => readings(local, zone).map(({ value }) => value));
                }
                """, times);
        assertThat(offsets).anyMatch(List::isEmpty).anyMatch(found -> found.size() == 2);
        assertThat(read).isEqualTo(offsets);
    }

    private void changeOnTheDevice(String id) {
        writer.page().evaluate("""
                async (id) => {
                  const at = [...document.scripts].find((script) => script.src.includes("/offline/")).src.replace(/[^/]+$/, "");
                  const { stillOpen } = await import(`${at}vault.js`);
                  const { open } = await import(`${at}database.js`);
                  const { CaseLogStore } = await import(`${at}case-log-store.js`);
                  const store = new CaseLogStore({ database: await open(), ...(await stillOpen()) });
                  await store.change(id, (now) => ({ ...now, state: "waiting", fields: { ...now.fields, eye: ["LEFT"] } }));
                }
                """, id);
    }

    private String onTheDevice() {
        return String.valueOf(writer.page().evaluate("""
                async () => {
                  const database = await new Promise((resolve) => {
                    const request = indexedDB.open("scrubline");
                    request.onsuccess = () => resolve(request.result);
                  });
                  const records = await new Promise((resolve) => {
                    const all = database.transaction("cases").objectStore("cases").getAll();
                    all.onsuccess = () => resolve(all.result);
                  });
                  database.close();
                  const decoder = new TextDecoder();
                  return JSON.stringify(records, (key, value) => (value instanceof Uint8Array ? decoder.decode(value) : value));
                }
                """));
    }

    private void check() {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            writer.page().emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            Axe.assertNoViolations(writer.page());
        }
        assertThat(writer.page().evaluate("() => document.documentElement.scrollWidth"))
                .isEqualTo(320);
        Object small = writer.page().evaluate("""
                () => [...document.querySelectorAll("main button, main a.button, main input:not([type=radio]):not([type=checkbox]):not([type=hidden]), main select")]
                  .filter((control) => control.checkVisibility() && !control.matches(".first"))
                  .filter((control) => { const box = control.getBoundingClientRect(); return box.height < 43.5 || box.width < 43.5; })
                  .map((control) => control.outerHTML.slice(0, 120))
                """);
        assertThat((List<?>) small).isEmpty();
    }

    private List<TraineeCase> logged() {
        return new ArrayList<>(in(() -> cases.ofTrainee(here.trainee().personId())));
    }

    private <T> T in(java.util.function.Supplier<T> work) {
        return here.organisation().in(work);
    }
}
