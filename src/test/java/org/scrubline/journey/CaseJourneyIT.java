package org.scrubline.journey;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.SelectOption;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;

/**
 * One real case as three people live it: the trainee logs it, the supervisor scores and signs it, the trainee reads and
 * answers it, the director sees it counted. Every page is checked for accessibility at phone and desktop width.
 */
class CaseJourneyIT {

    private static final ServerProcess SERVER = DemoServer.shared();
    private static final int PHONE = 360;
    private static final int DESKTOP = 1280;

    private int pages;

    @Test
    void aCaseGoesFromTheTraineesLogToTheDirectorsPage() {
        String reference = traineeLogsAndScoresThemselves();
        int before = signedCasesSeenByTheDirector();
        String record = supervisorScoresAndSigns(reference);
        traineeReadsAndAnswers(record);
        assertThat(signedCasesSeenByTheDirector()).isEqualTo(before + 1);
        directorFollowsTheNumberToTheRecord();
        System.out.println("Pages checked at two widths: " + pages);
    }

    private String traineeLogsAndScoresThemselves() {
        try (BrowserContext context = phone()) {
            Page page = logIn(context, "hallinor");
            look(page, "01-my-cases");
            page.locator("main a[href='/cases/new']").first().click();
            look(page, "02-log-a-case");
            page.locator("main .button-main").click();
            assertThat(page.locator(".error-summary a")).not().hasCount(0);
            look(page, "03-log-a-case-refused");
            String reference = page.locator("input[name=reference]").inputValue();
            page.locator("select[name=procedure]").selectOption("TRAB_FORNIX");
            page.locator("label:has(input[name=eye][value=LEFT])").click();
            page.locator("select[name=site]").selectOption(new SelectOption().setLabel("Sankt Orlin Eye Institute"));
            page.locator("select[name=supervisor]").selectOption(new SelectOption().setLabel("Dr Ottilie Brannock"));
            page.locator("label:has(input[name=plannedSupervision][value=SCRUBBED])")
                    .click();
            page.locator("label:has(input[name=claimedPart][value=WHOLE_CASE])").click();
            page.locator("label:has(input[name=factors][value=SCARRED])").click();
            page.locator("main .button-main").click();
            assertThat(page.locator(".flash")).containsText("waits for its score");
            look(page, "04-case-logged");
            page.locator("main a[href$='/self-score']").first().click();
            page.locator("label:has(input[name='level.TF01'][value='4'])").click();
            look(page, "05-self-score");
            page.locator("main .button-main").click();
            assertThat(page.locator(".flash")).containsText("level");
            return reference;
        }
    }

    private String supervisorScoresAndSigns(String reference) {
        try (BrowserContext context = phone()) {
            Page page = logIn(context, "brannock");
            look(page, "06-to-score");
            page.locator("main li")
                    .filter(new Locator.FilterOptions().setHasText(reference))
                    .locator("a")
                    .first()
                    .click();
            look(page, "07-sheet-empty");
            page.getByText("Confirm as logged").click();
            List<String> steps = page.locator("section.step").all().stream()
                    .map(step -> step.getAttribute("id").substring("step-".length()))
                    .toList();
            assertThat(steps).hasSize(19);
            for (int i = 0; i < steps.size() - 1; i++) {
                String level = String.valueOf(3 + i % 3);
                page.locator("label:has(> input[name='step." + steps.get(i) + "'][value='" + level + "'])")
                        .click();
            }
            page.locator("[data-picks='strength.pick'] button").first().click();
            page.locator("[data-picks='nextStep.pick'] button").first().click();
            assertThat(page.locator(".feedback .save-state[data-state=saved]")).hasCount(2);
            look(page, "08-sheet-full");
            page.getByText("Review and sign").click();
            page.waitForURL("**/review");
            look(page, "09-review-with-a-blank");
            page.getByText("untouched step").last().click();
            page.locator("input[name=password]").fill("not the password");
            page.locator("main .button-main").click();
            assertThat(page.locator(".error-summary")).containsText("That is not your password");
            look(page, "10-review-wrong-password");
            page.locator("input[name=password]").fill(DemoServer.PASSWORD);
            page.locator("main .button-main").dblclick();
            page.waitForURL("**/signed/*");
            assertThat(page.locator(".signature")).containsText("Dr Ottilie Brannock");
            look(page, "11-signed");
            page.navigate(SERVER.address() + "/signed");
            look(page, "12-signed-by-me");
            page.locator("main a[href*='/signed/']").first().click();
            return page.url();
        }
    }

    private void traineeReadsAndAnswers(String record) {
        try (BrowserContext context = phone()) {
            Page page = logIn(context, "hallinor");
            page.navigate(SERVER.address() + "/feedback");
            look(page, "13-feedback");
            assertThat(page.locator("main a[href*='/signed/']").first().getAttribute("href"))
                    .isEqualTo(record.substring(SERVER.address().length()));
            page.navigate(record);
            page.locator("#body").fill("The flap felt thin near the hinge.");
            page.locator("form[action$=remarks] button").click();
            assertThat(page.locator(".remark")).containsText("The flap felt thin near the hinge.");
            look(page, "14-record-with-remark");
            page.navigate(SERVER.address() + "/progress");
            look(page, "15-my-progress");
            page.navigate(SERVER.address() + "/rubrics");
            look(page, "16-rubrics");
            page.locator("main a[href*='/rubrics/']").first().click();
            look(page, "17-rubric");
        }
    }

    private int signedCasesSeenByTheDirector() {
        try (BrowserContext context = phone()) {
            Page page = logIn(context, "delmarr");
            look(page, "18-cohort");
            String facts = page.locator(".facts").first().innerText();
            var matcher =
                    java.util.regex.Pattern.compile("(\\d+)\\s*signed cases").matcher(facts);
            if (!matcher.find()) {
                throw new AssertionError("no number of signed cases in: " + facts);
            }
            return Integer.parseInt(matcher.group(1));
        }
    }

    private void directorFollowsTheNumberToTheRecord() {
        try (BrowserContext context = phone()) {
            Page page = logIn(context, "delmarr");
            page.locator("table a[href*='/steps/TF09']").first().click();
            look(page, "19-cases-behind-a-number");
            page.locator("main a[href*='/signed/']").first().click();
            assertThat(page.locator(".signature").first()).isVisible();
            page.navigate(SERVER.address() + "/cohort");
            page.locator("table a[href*='/progress/']").first().click();
            look(page, "20-trainee-for-the-director");
        }
    }

    private static BrowserContext phone() {
        return Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(PHONE, 740));
    }

    private Page logIn(BrowserContext context, String username) {
        Page page = context.newPage();
        page.navigate(SERVER.address() + "/login");
        look(page, "00-log-in");
        page.fill("#username", username);
        page.fill("#password", DemoServer.PASSWORD);
        page.locator("main .button-main").click();
        page.waitForURL(url -> !url.contains("/login"));
        return page;
    }

    /**
     * Checks that the page fits both widths and is accessible on the phone, and leaves a picture of each in the build directory. The window is as high as the
     * page, so that the verdict bar of the sheet stands in its own place and covers no control half.
     */
    private void look(Page page, String name) {
        for (int width : new int[] {DESKTOP, PHONE}) {
            page.setViewportSize(width, 740);
            Object height = page.evaluate("() => document.documentElement.scrollHeight");
            page.setViewportSize(width, (Integer) height + 20);
            if (width == PHONE) {
                Axe.assertNoViolations(page);
            }
            assertThat((Integer) page.evaluate("() => document.documentElement.scrollWidth"))
                    .as("%s at %d px scrolls sideways", name, width)
                    .isLessThanOrEqualTo(width);
            page.screenshot(new Page.ScreenshotOptions()
                    .setPath(Path.of("target/journey/" + name + "-" + width + ".png"))
                    .setFullPage(true));
        }
        page.setViewportSize(PHONE, 740);
        pages++;
    }
}
