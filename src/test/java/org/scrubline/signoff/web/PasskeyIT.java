package org.scrubline.signoff.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
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
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.CredentialCheck;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.people.Invitations;
import org.scrubline.people.People;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.platform.factor.AuthenticatorApp;
import org.scrubline.signoff.SignedContent;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

/** Passkeys as a person meets them: a real browser, with Chromium's own authenticator as the device. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.DEFINED_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class PasskeyIT {

    /** Known before the server starts, since passkeys answer from one address only. */
    private static final int PORT = freePort();

    /** An organisation with a log-in of its own. */
    private static final UUID ORLIN = UUID.fromString("7f0c2d3e-52f1-4b0c-9f5e-0a1d6f2b7c21");

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    Invitations invitations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Assertions assertions;

    @Autowired
    Passkeys passkeys;

    @Autowired
    Clock clock;

    Theatre theatre;
    BrowserContext context;
    Page page;
    Authenticator device;

    @DynamicPropertySource
    static void port(DynamicPropertyRegistry registry) {
        registry.add("server.port", () -> PORT);
        registry.add("spring.mail.host", () -> "127.0.0.1");
        registry.add("scrubline.single-sign-on.connections.orlin.organisation", () -> ORLIN);
        registry.add("scrubline.single-sign-on.connections.orlin.label", () -> "Orlin house log-in");
        registry.add("scrubline.single-sign-on.connections.orlin.issuer", () -> "http://127.0.0.1:1/orlin");
        registry.add("scrubline.single-sign-on.connections.orlin.client-id", () -> "scrubline");
        registry.add("scrubline.single-sign-on.connections.orlin.client-secret", () -> "a secret of the connection");
    }

    @BeforeEach
    void openABrowser() {
        theatre = sheetFixture.theatre(organisations);
        open(new Browser.NewContextOptions().setViewportSize(360, 740));
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void aKeyIsAddedThenLogsInThenSigns() {
        logIn(theatre.supervisor());
        page.locator("header a[href='/account/keys']").click();
        look("keys-empty");
        addAKey("theatre phone");
        assertThat(page.locator(".flash")).containsText("“theatre phone” is added");
        look("keys-one");
        page.locator("header .who button").click();
        page.waitForURL("**/login?left");
        look("login");

        page.locator("[data-passkey] button").click();
        page.waitForURL(url -> !url.contains("/login"));
        assertThat(page.locator(".who b")).hasText("Ansel Verrin");

        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(2)));
        page.navigate(address("/sheets/" + sheet + "/review"));
        look("review");
        page.locator("[data-passkey] button").dblclick();
        page.waitForURL("**/signed/*");
        assertThat(page.locator(".credential")).containsText("signed the hash of what was reviewed");
        look("record");

        SignedSheet signed =
                theatre.organisation().in(() -> signedSheets.ofSheet(sheet)).orElseThrow();
        assertThat(theatre.organisation()
                        .in(() -> assertions.of(LeafKind.SIGNATURE, signed.id()))
                        .map(kept -> CredentialCheck.fault(claim(SignedContent.read(signed.content())), kept)))
                .hasValueSatisfying(fault -> assertThat(fault).isEmpty());
    }

    @Test
    void aSecondFactorIsSetUpPrintedAndAsked() {
        logIn(theatre.supervisor());
        page.navigate(address("/account/second-factor"));
        look("second-factor-set-up");
        String secret = page.locator("main b.number").innerText();
        page.fill("#code", "000000");
        page.locator("main .button-main").click();
        assertThat(page.getByRole(AriaRole.ALERT)).containsText("This is not the code the app shows");
        page.fill("#code", new AuthenticatorApp(secret).code(clock.instant()));
        page.locator("main .button-main").click();
        assertThat(page.locator(".recovery-codes li")).hasCount(10);
        look("recovery-codes");
        String recovery = page.locator(".recovery-codes li").first().innerText();
        for (String own : List.of("second-factor", "sessions", "password")) {
            page.navigate(address("/account/" + own));
            look("account-" + own);
        }
        page.locator("header .who button").click();
        page.waitForURL("**/login?left");

        page.fill("#username", theatre.supervisor().username());
        page.fill("#password", TestOrganisations.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL("**/login/code");
        look("login-code");
        page.fill("#code", recovery);
        page.locator("main .button-main").first().click();
        page.waitForURL(url -> !url.contains("/login"));
        assertThat(page.locator(".who b")).hasText("Ansel Verrin");
    }

    @Test
    void everythingIsDoneFromTheKeyboard() {
        logIn(theatre.supervisor());
        page.navigate(address("/account/keys"));
        page.locator("#label").focus();
        page.keyboard().type("theatre phone");
        page.keyboard().press("Enter");
        assertThat(page.locator(".flash")).containsText("is added");

        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(2)));
        page.navigate(address("/sheets/" + sheet + "/review"));
        page.locator("[data-passkey] button").focus();
        page.keyboard().press("Enter");
        page.waitForURL("**/signed/*");
    }

    @Test
    void aPromptThatIsNotAnsweredSignsNothingAndSaysSo() {
        logIn(theatre.supervisor());
        page.navigate(address("/account/keys"));
        addAKey("theatre phone");
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(2)));
        page.navigate(address("/sheets/" + sheet + "/review"));

        device.recognisesItsOwner(false);
        page.locator("[data-passkey] button").click();
        assertThat(page.locator(".passkey-said")).containsText("The passkey did not answer");
        assertThat(page.locator("[data-passkey] button")).isFocused();
        look("review-unanswered");
        assertThat(theatre.organisation().in(() -> signedSheets.ofSheet(sheet))).isEmpty();

        device.recognisesItsOwner(true);
        page.locator("[data-passkey] button").click();
        page.waitForURL("**/signed/*");
    }

    @Test
    void aKeyIsRemovedWithAQuestionAndOpensNothingAfterwards() {
        logIn(theatre.supervisor());
        page.navigate(address("/account/keys"));
        addAKey("theatre phone");
        page.getByText("Remove", new Page.GetByTextOptions().setExact(true)).click();
        look("keys-remove");
        page.locator("main button").click();
        assertThat(page.locator(".flash")).containsText("is removed");
        page.locator("header .who button").click();
        page.waitForURL("**/login?left");

        page.locator("[data-passkey] button").click();
        assertThat(page.locator(".notice-careful")).containsText("This passkey opens no account here");
        look("login-refused");
    }

    @Test
    void theKeyOfOnePersonIsNotOfferedToAnother() {
        logIn(theatre.supervisor());
        page.navigate(address("/account/keys"));
        addAKey("theatre phone");
        page.locator("header .who button").click();
        page.waitForURL("**/login?left");

        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        Theatre hers = new Theatre(theatre.organisation(), colleague, theatre.trainee());
        UUID sheet = fixture.complete(hers, clock.instant().minus(Duration.ofHours(2)));
        logIn(colleague);
        page.navigate(address("/sheets/" + sheet + "/review"));
        assertThat(page.locator("[data-passkey]")).hasCount(0);
        assertThat(page.locator("#password")).isVisible();
        assertThat(passkeys.of(colleague.accountId())).isEmpty();
    }

    @Test
    void whoBelongsToTwoOrganisationsChoosesAfterThePasskeyWithOneClick() {
        TestOrganisation other = organisations.open();
        String code = invitedBy(other);
        logIn(theatre.supervisor());
        page.navigate(address("/account/keys"));
        addAKey("theatre phone");
        page.navigate(address("/account/invitation"));
        look("own-invitation");
        page.locator("#code").fill(code);
        page.locator("main .button-main").click();
        page.waitForURL("**/account/organisation");
        look("organisation");
        page.locator("header .who button").click();
        page.waitForURL("**/login?left");

        page.locator("[data-passkey] button").click();
        page.waitForURL("**/login/organisation");
        look("organisation-choice");
        page.locator("main button[value='" + other.tenant() + "']").click();
        page.waitForURL(url -> !url.contains("/login"));
        assertThat(page.locator(".who b")).hasText("A. Verrin");
    }

    private String invitedBy(TestOrganisation other) {
        return other.in(() -> {
            UUID programme = other.programme().id();
            UUID person = people.addPerson(programme, "A. Verrin", "v" + programme, Role.TRAINEE)
                    .orThrow()
                    .personId();
            return invitations
                    .make(programme, person, InvitationLife.DAY)
                    .orThrow()
                    .code();
        });
    }

    @Test
    void theOtherWaysInAreAccessibleAndACodeFromAMailLeavesTheAddress() {
        for (String path : List.of("/login/help", "/login/new-password?asked", "/welcome", "/welcome/provider")) {
            page.navigate(address(path));
            look(path.replaceAll("\\W", "-"));
        }
        page.navigate(address("/login/new-password#ABCDE-FGHJK-LMNPQ-RSTUV"));
        assertThat(page.locator("#code")).hasValue("ABCDE-FGHJK-LMNPQ-RSTUV");
        assertThat(page).hasURL(address("/login/new-password"));

        logIn(organisations.at(ORLIN).join("Maren Tolvik", Role.SUPERVISOR));
        page.navigate(address("/account/provider"));
        assertThat(page.locator("h1")).hasText("Orlin house log-in");
        look("provider");
        page.navigate(address("/account/address"));
        page.locator("#address").fill("ward@hospital.example");
        page.locator("main button[type=submit]").first().click();
        assertThat(page.locator("main")).containsText("A code was sent to ward@hospital.example");
        look("address");
    }

    @Test
    void atAnotherAddressThePageSaysWhereKeysWork() {
        page.navigate("http://127.0.0.1:" + PORT + "/login");
        assertThat(page.locator(".passkey-said")).containsText("Passkeys work at http://localhost:" + PORT);
        assertThat(page.locator("[data-passkey] button")).isHidden();
        look("login-elsewhere");
    }

    @Test
    void aBrowserWithoutPasskeysSaysSoAndOneWithoutScriptShowsNothing() {
        page.addInitScript("delete window.PublicKeyCredential");
        page.navigate(address("/login"));
        assertThat(page.locator(".passkey-said")).containsText("This browser cannot use passkeys");
        assertThat(page.locator("[data-passkey] button")).isHidden();
        context.close();

        context = Chromium.browser().newContext(new Browser.NewContextOptions().setJavaScriptEnabled(false));
        page = context.newPage();
        page.navigate(address("/login"));
        assertThat(page.locator("[data-passkey]")).isHidden();
        assertThat(page.locator("#password")).isVisible();
    }

    private void open(Browser.NewContextOptions options) {
        context = Chromium.browser().newContext(options);
        page = context.newPage();
        device = Authenticator.on(page);
    }

    private void logIn(SignedIn who) {
        page.navigate(address("/login"));
        page.locator("#username").fill(who.username());
        page.locator("#password").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(url -> !url.contains("/login"));
    }

    private void addAKey(String label) {
        page.locator("#label").fill(label);
        page.locator("[data-passkey=create] button").click();
        assertThat(page.locator(".flash")).containsText("is added");
    }

    /** Accessible and no wider than the screen, on a desk by night and on a phone by day. */
    private void look(String name) {
        look(name, ColorScheme.DARK, 1280);
        look(name, ColorScheme.LIGHT, 360);
    }

    private void look(String name, ColorScheme theme, int width) {
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(theme));
        page.setViewportSize(width, 740);
        Axe.assertNoViolations(page);
        assertThat((Integer) page.evaluate("() => document.documentElement.scrollWidth"))
                .as("%s at %d px", name, width)
                .isLessThanOrEqualTo(width);
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(Path.of("target", "screenshots", "passkey-" + name + "-" + width + ".png"))
                .setFullPage(true));
    }

    private static String address(String path) {
        return "http://localhost:" + PORT + path;
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static CredentialClaim claim(SignedContent content) {
        return new CredentialClaim(content.reviewedHash(), content.credential());
    }
}
