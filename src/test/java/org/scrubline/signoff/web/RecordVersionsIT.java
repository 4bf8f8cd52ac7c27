package org.scrubline.signoff.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.signoff.RecordFixture;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/**
 * A level is put right in a new version and the two are read side by side; the trainee contests, the supervisor replies,
 * the director names a reviewer, who upholds and signs the version after; at last
 * two people make the record void.
 */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class RecordVersionsIT {

    private static final int HEIGHT = 800;
    private static final String WIDER =
            "() => document.documentElement.scrollWidth > document.documentElement.clientWidth";

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    RecordFixture acts;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn director;
    SignedIn reviewer;
    SignedSheet signed;
    BrowserContext context;
    Page page;
    int width;

    @BeforeEach
    void signASheet() {
        theatre = sheetFixture.theatre(organisations);
        director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        reviewer = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
    }

    @AfterEach
    void close() {
        context.close();
    }

    @ParameterizedTest
    @ValueSource(ints = 360)
    void aLevelIsPutRightThenContestedUpheldAndSignedAgain(int screen) {
        width = screen;
        newVersion();
        contest();
        reply();
        nameReviewer();
        uphold();
        askForAVoidAndConfirmIt();
    }

    private void newVersion() {
        open(theatre.supervisor(), "/signed/" + signed.id());
        page.locator(".actions a", new Page.LocatorOptions().setHasText("Open a new version"))
                .click();
        check("new-version");
        page.locator("#reason").fill(RecordFixture.REASON);
        page.locator("main .button-main").click();
        page.waitForURL("**/sheets/*");
        assertThat(page.locator("main").innerText()).contains("You are writing version 2 of a signed sheet.");
        setLevel("TF09", 2);
        page.navigate(address("/sheets/" + signed.sheetId()));
        check("sheet");
        page.navigate(address("/signed/" + signed.id()));
        check("record-writing");
        sign();
        assertThat(page.locator(".versions").innerText()).contains("Version 1", "Version 2", RecordFixture.REASON);
        check("record");
        page.locator("a", new Page.LocatorOptions().setHasText("Compare version 1 with version 2"))
                .click();
        assertThat(page.locator(".pairs .changed .mark").count()).isEqualTo(3);
        check("compare");
        page.navigate(address("/signed/" + signed.id()));
        assertThat(page.locator(".notice-careful").innerText()).contains("Version 1 of 2; version 2 counts.");
        check("older");
    }

    private void contest() {
        open(theatre.trainee(), "/sheets/" + signed.sheetId() + "/signed");
        check("trainee-record");
        page.locator(".actions a", new Page.LocatorOptions().setHasText("Contest this score"))
                .click();
        check("contest-form");
        page.locator("label:has(input[name=steps][value=TF09])").click();
        page.locator("#reason").fill("I did this step alone, start to finish.");
        page.locator("#password").fill("not the password");
        page.locator("main .button-main").click();
        assertThat(page.locator(".error-summary").innerText()).contains("That is not your password");
        assertThat(page.locator("input[name=steps][value=TF09]").isChecked()).isTrue();
        check("contest-wrong");
        send();
        page.waitForURL("**/contests/*");
        check("contest");
        page.navigate(address("/feedback"));
        assertThat(page.locator(".link-list .mark").allInnerTexts()).anyMatch(mark -> mark.contains("contested"));
        check("feedback");
    }

    private void reply() {
        open(theatre.supervisor(), "/contests");
        assertThat(page.locator("main").innerText()).contains("Waiting for you", "days left");
        check("contests");
        page.locator(".link-list a").first().click();
        page.locator(".actions a").first().click();
        page.locator("#reason").fill("I held the flap for most of this step.");
        check("reply");
        send();
    }

    private void nameReviewer() {
        open(director, "/contests");
        page.locator(".link-list a").first().click();
        page.locator(".actions a").first().click();
        page.locator("#reviewer").selectOption(reviewer.personId().toString());
        check("reviewer");
        send();
        page.navigate(address("/cohort?procedure=TRAB_FORNIX&show=contested"));
        assertThat(page.locator("#trainees").innerText()).contains("Fenna Hallinor");
        check("cohort");
    }

    private void uphold() {
        open(reviewer, "/contests");
        page.locator(".link-list a").first().click();
        check("review");
        page.locator(".actions a").first().click();
        page.locator("#reason").fill("The video of the case settles this step.");
        check("decision");
        send();
        page.locator(".actions a", new Page.LocatorOptions().setHasText("Open a new version"))
                .click();
        page.locator("#reason").fill("The contest of this step was upheld.");
        page.locator("main .button-main").click();
        page.waitForURL("**/sheets/*");
        setLevel("TF09", 5);
        sign();
        assertThat(page.locator(".signature").innerText())
                .contains("Ottilie Brannock", "I reviewed this record after a contest");
        assertThat(page.locator(".versions").innerText()).contains("Version 3");
        check("third");
    }

    private void askForAVoidAndConfirmIt() {
        page.locator(".actions a", new Page.LocatorOptions().setHasText("Ask for a void"))
                .click();
        page.locator("#ground").selectOption("WRONG_TRAINEE");
        page.locator("#reason").fill("This case was another trainee’s case.");
        check("void");
        send();
        check("void-asked");
        open(director, "/contests");
        page.locator(".link-list a", new Page.LocatorOptions().setHasText("Fenna Hallinor"))
                .first()
                .click();
        check("void-decision");
        send();
        assertThat(page.locator(".notice-careful").innerText()).contains("the record is void");
        check("voided");
        open(theatre.trainee(), "/feedback");
        assertThat(page.locator("main").innerText()).contains("Out of all numbers and counts.");
        check("feedback-void");
        page.navigate(address("/contests"));
        check("contests-ended");
    }

    private void setLevel(String step, int level) {
        page.evaluate("document.querySelectorAll('details.phase').forEach(one => one.open = true)");
        assertThat(page.waitForResponse(
                                "**/taps",
                                () -> page.locator(
                                                "label:has(> input[name='step." + step + "'][value='" + level + "'])")
                                        .click())
                        .status())
                .isEqualTo(200);
    }

    private void sign() {
        page.navigate(address("/sheets/" + signed.sheetId() + "/review"));
        check("review-version");
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL("**/signed/*");
    }

    private void send() {
        page.locator("#password").fill(TestOrganisations.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL(url -> !url.endsWith("/reply")
                && !url.endsWith("/reviewer")
                && !url.endsWith("/decision")
                && !url.endsWith("/void")
                && !url.endsWith("/contest"));
    }

    private void open(SignedIn who, String path) {
        if (context != null) {
            context.close();
        }
        context = Chromium.browser()
                .newContext(new Browser.NewContextOptions()
                        .setViewportSize(width, HEIGHT)
                        .setJavaScriptEnabled(true));
        page = context.newPage();
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(url -> !url.endsWith("/login"));
        page.navigate(address(path));
    }

    private void check(String name) {
        // With the whole page in view the sheet's fixed bar covers nothing.
        page.setViewportSize(width, ((Number) page.evaluate("document.documentElement.scrollHeight")).intValue());
        Axe.assertNoViolations(page);
        page.setViewportSize(width, HEIGHT);
        assertThat((boolean) page.evaluate(WIDER))
                .as("%s is wider than the screen", name)
                .isFalse();
        String directory = System.getProperty("scrubline.test.shots", "");
        if (!directory.isEmpty()) {
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of(directory, "versions-" + name + "-" + width + ".png"))
                    .setFullPage(true));
        }
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }
}
