package org.scrubline.journey;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;

class FirstStartIT {

    private static final Pattern TOKEN = Pattern.compile("(?m)^ +([A-Z2-9]{5}(?:-[A-Z2-9]{5}){3})$");
    private static final Pattern CODE = Pattern.compile("[A-Z2-9]{5}(?:-[A-Z2-9]{5}){3}");
    private static final String SENTENCE = "a quiet first sentence";

    @Test
    void theTokenOnTheConsoleOpensAnEmptyServerOnce(@TempDir Path directory) {
        try (ServerProcess server = ServerProcess.start(directory);
                BrowserContext context = Chromium.browser().newContext()) {
            Page page = context.newPage();
            page.navigate(server.address() + "/setup");
            Axe.assertNoViolations(page);
            openOrganisation(page, "WRONG-TOKEN");
            assertThat(page.getByRole(AriaRole.ALERT)).containsText("not the token on the console");
            Axe.assertNoViolations(page);

            openOrganisation(page, server.printed(TOKEN));
            assertThat(page).hasURL(Pattern.compile(".*/login\\?ready"));
            logIn(page, "ormandine");
            assertThat(page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setLevel(1)))
                    .hasText("People and places");

            for (String path : List.of("/people/provisioning", "/people/lost-factors")) {
                page.navigate(server.address() + path);
                Axe.assertNoViolations(page);
            }
            page.navigate(server.address() + "/people");
            String code = invite(page);
            page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Log out"))
                    .click();
            page.navigate(server.address() + "/welcome");
            Axe.assertNoViolations(page);
            page.fill("#code", code);
            page.fill("#password", SENTENCE);
            page.locator("main .button-main").click();
            logIn(page, "brannock");
            assertThat(page).hasURL(Pattern.compile(".*/to-score"));

            page.navigate(server.address() + "/rubrics");
            assertThat(page.locator("main")).containsText("Trabeculectomy");
            page.navigate(server.address() + "/setup");
            assertThat(page.locator("h1")).hasText("Nothing here for you");
        }
    }

    private static void openOrganisation(Page page, String token) {
        page.fill("#token", token);
        page.fill("#organisation", "Norrvale Health Region");
        page.fill("#programme", "Norrvale Filtration Surgery Programme");
        page.fill("#siteCode", "OEI");
        page.fill("#siteName", "Sankt Orlin Eye Institute");
        page.selectOption("#zone", "Europe/Copenhagen");
        page.fill("#printedName", "Pell Ormandine");
        page.fill("#username", "ormandine");
        page.fill("#password", SENTENCE);
        page.locator("main .button-main").click();
    }

    private static String invite(Page page) {
        page.fill("#printedName", "Dr Ottilie Brannock");
        page.fill("#username", "brannock");
        page.selectOption("#role", "SUPERVISOR");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Add and make an invitation"))
                .click();
        Axe.assertNoViolations(page);
        var matcher = CODE.matcher(page.locator("main").innerText());
        if (!matcher.find()) {
            throw new AssertionError("no invitation code on the page");
        }
        return matcher.group();
    }

    private static void logIn(Page page, String username) {
        page.fill("#username", username);
        page.fill("#password", SENTENCE);
        page.locator("main .button-main").click();
    }
}
