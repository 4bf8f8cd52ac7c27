package org.scrubline.table;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Authenticator;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** A sheet scored, read and signed with the network cut; Chromium's own authenticator is the passkey of the device. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class SigningAtTheTableIT {

    private static final int MOST_TAPS = 30;

    /** Pause between two taps in milliseconds; the bar is a signed sheet in 90 s with 2 s between taps. */
    private static final int PAUSE = Integer.getInteger("scrubline.test.pause", 0);

    /** Known before the server starts, since passkeys answer from one address only. */
    private static final int WIRE = freePort();

    private static final LocatorAssertions.ContainsTextOptions PATIENTLY =
            new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

    @LocalServerPort
    int port;

    @Autowired
    Sheets sheets;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    Theatre theatre;
    UUID id;
    Wire wire;
    BrowserContext context;
    Assessor assessor;
    Page page;
    int taps;

    @DynamicPropertySource
    static void origin(DynamicPropertyRegistry registry) {
        registry.add("scrubline.web.origin", () -> "http://localhost:" + WIRE);
    }

    @BeforeEach
    void logInWithAPasskeyOnTheDevice() {
        theatre = fixture.theatre(organisations);
        id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        wire = new Wire(WIRE, port);
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 640));
        assessor = new Assessor(wire, context);
        page = assessor.page();
        page.onPageError(error -> System.out.println("On the page: " + error));
        Authenticator.on(page);
        assessor.logIn(theatre.supervisor());
        page.navigate(wire.address("/account/keys"));
        page.locator("#label").fill("theatre phone");
        page.locator("[data-passkey] button").click();
        assertThat(page.locator(".flash")).containsText("is added");
        assessor.setUp(Assessor.PHRASE, 1);
    }

    @AfterEach
    void close() {
        context.close();
        wire.close();
    }

    @Test
    void aSheetIsScoredAndSignedWithTheNetworkCutAndReceivedOnceItIsBack() {
        wire.cut();
        long start = System.nanoTime();
        tap("#sheets a");
        assertThat(page.locator("#sheet .save")).isHidden();
        tap("button[name=role]");
        // In the order of the page, where each phase opens by itself after the one before; the last step is the rest.
        List<Locator> steps = page.locator("section.step").all();
        for (int at = 0; at < 18; at++) {
            tap("#%s label:has(> input[value='%d'])".formatted(steps.get(at).getAttribute("id"), 3 + at % 3));
        }
        tap("button[name=rest][value='FINAL_CHECKS:BY_SUPERVISOR']");
        page.getByText("Record an event").click();
        taps++;
        tap(".chips label:has-text('Bleeding beyond usual')");
        tap(".places button:has-text('Bleeding control')");
        tap("[data-picks='strength.pick'] button >> nth=0");
        tap("[data-picks='nextStep.pick'] button >> nth=0");
        tap(".verdict-bar .button-main");
        assertThat(page.locator("#sign")).isVisible();
        assertThat(page.locator("#sign-steps li")).hasCount(19);
        assertThat(page.locator("#sign-obstacles")).isHidden();
        look("read");
        tap("#sign-now");
        assertThat(page.locator("#sign-said")).containsText("waits here until the server has it");
        Duration took = Duration.ofNanos(System.nanoTime() - start);
        look("pending");
        System.out.println("A sheet signed without a network: " + taps + " taps, " + took.toMillis() + " ms");
        assertThat(taps).isLessThanOrEqualTo(MOST_TAPS);
        assertThat(took).isLessThan(Duration.ofSeconds(90));

        page.locator("#sign-back").click();
        assertThat(page.locator("#sheets")).containsText("signed here, waiting for the network");
        assertThat(state()).isEqualTo(SheetState.OPEN);
        wire.mend();
        page.evaluate("() => dispatchEvent(new Event('online'))");
        assertThat(page.locator("#sheets")).containsText("signed and received", PATIENTLY);
        look("received");
        SignedSheet signed =
                theatre.organisation().in(() -> signedSheets.ofSheet(id)).orElseThrow();
        SignedContent content = SignedContent.read(signed.content());
        assertThat(content.credential().kind()).isEqualTo(CredentialUsed.Kind.PASSKEY);
        assertThat(content.device().far()).isFalse();
        assertThat(content.reviewed().steps()).hasSize(19);
        page.locator("#sheets a").click();
        page.waitForURL("**/signed/" + signed.id());
        assertThat(page.locator("main")).containsText("Clock of the device");
        assertThat(page.locator(".credential")).containsText("on a device without a network");
        look("record");
        page.navigate(wire.address("/at-the-table"));
        assertThat(page.locator("#no-sheets")).isVisible();
    }

    @Test
    void whatIsMissingIsSaidAndOneTapAnswersForTheUntouchedSteps() {
        wire.cut();
        assessor.openTheSheet();
        tap("button[name=role]");
        tap("label:has(> input[name='step.TF01'][value='4'])");
        tap(".verdict-bar .button-main");
        assertThat(page.locator("#sign-obstacles li")).hasCount(18);
        assertThat(page.locator("#sign-here")).isHidden();
        look("obstacles");
        tap("#sign-untouched");
        assertThat(page.locator("#sign-obstacles")).isHidden();
        assertThat(page.locator("#sign-steps li", new Page.LocatorOptions().setHasText("not seen")))
                .hasCount(18);
        tap("#sign-back");
        assertThat(page.locator("#sheet")).isVisible();
    }

    @Test
    void aSignatureSurvivesALockAndIsTakenBack() {
        wire.cut();
        scoreEverything();
        tap(".verdict-bar .button-main");
        tap("#sign-now");
        assertThat(page.locator("#sign-pending")).isVisible();
        page.locator("#sign-back").click();
        page.locator("#lock").click();
        assessor.unlock(Assessor.PHRASE);
        tap("#sheets a");
        assertThat(page.locator("#sign-said")).containsText("waits here until the server has it");
        tap("#sign-take-back");
        assertThat(page.locator("#sheet")).isVisible();
        assessor.unfold().answer("TF03", "2").sees("TF03", "kept");
        wire.mend();
        page.waitForCondition(
                () -> assessor.stored("taps") == 0, new Page.WaitForConditionOptions().setTimeout(60_000));
        assertThat(state()).isEqualTo(SheetState.OPEN);
    }

    @Test
    void aSignatureUnderASheetThatMovedOnIsSaidAndNotMadeARecord() {
        wire.cut();
        scoreEverything();
        tap(".verdict-bar .button-main");
        tap("#sign-now");
        assertThat(page.locator("#sign-pending")).isVisible();
        page.locator("#sign-back").click();
        wire.mend();
        wire.next(Wire.Fault.LOST, "/signing", 1);
        page.evaluate("() => dispatchEvent(new Event('online'))");
        page.waitForCondition(
                () -> assessor.stored("taps") == 0, new Page.WaitForConditionOptions().setTimeout(60_000));
        theatre.organisation().in(() -> {
            var sheet = sheets.get(id);
            return sheets.change(
                            theatre.supervisor(),
                            id,
                            sheet.lockVersion(),
                            new org.scrubline.casework.SheetChange.SetFeedback("Calm hands", "Slower at the flap"))
                    .orThrow();
        });
        page.evaluate("() => dispatchEvent(new Event('online'))");
        assertThat(page.locator("#sheets")).containsText("not accepted", PATIENTLY);
        assertThat(state()).isEqualTo(SheetState.OPEN);
        page.locator("#sheets a").click();
        assertThat(page.locator(".unsaved")).containsText("not the one you signed");
    }

    private void scoreEverything() {
        assessor.openTheSheet();
        page.locator("button[name=role]").first().click();
        for (int step = 1; step <= 19; step++) {
            assessor.answer("TF%02d".formatted(step), "4");
        }
        assertThat(page.locator(".verdict-bar .number")).containsText("19 of 19");
    }

    private SheetState state() {
        return theatre.organisation().in(() -> sheets.get(id)).state();
    }

    private void tap(String control) {
        page.locator(control).first().click();
        taps++;
        if (PAUSE > 0) {
            page.waitForTimeout(PAUSE);
        }
    }

    private void look(String name) {
        for (ColorScheme scheme : List.of(ColorScheme.DARK, ColorScheme.LIGHT)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            Axe.assertNoViolations(page);
        }
        assertThat(page.evaluate("() => document.documentElement.scrollWidth")).isEqualTo(360);
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(Path.of("target", "screenshots", "signing-at-the-table-" + name + ".png"))
                .setFullPage(true));
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
