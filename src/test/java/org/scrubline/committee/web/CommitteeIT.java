package org.scrubline.committee.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.committee.CommitteeFixture;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.committee.Decision;
import org.scrubline.committee.Meeting;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.people.VisitorRequest;
import org.scrubline.people.Visitors;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.support.History;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** The committee's pages in a browser, and a visitor's way from a decision back to a signed sheet. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class, History.class})
class CommitteeIT {

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    History history;

    @Autowired
    CommitteeFixture fixture;

    @Autowired
    Visitors visitors;

    /** Written once: the tests only read. */
    static @Nullable Scene scene;

    Board board;
    Meeting meeting;
    Decision decision;
    SignedIn visitor;
    String evidence;
    BrowserContext context;
    Page page;

    private record Scene(Board board, Meeting meeting, Decision decision, SignedIn visitor) {}

    @BeforeEach
    void decide() {
        if (scene == null) {
            scene = write();
        }
        board = scene.board();
        meeting = scene.meeting();
        decision = scene.decision();
        visitor = scene.visitor();
        evidence = "/meetings/" + meeting.id() + "/trainees/" + board.trainee().personId();
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 740));
        page = context.newPage();
    }

    private Scene write() {
        Board written = fixture.board(organisations, history, 13);
        Meeting open = fixture.open(written);
        Decision decided = fixture.decided(written, open, EntitlementLevel.E2);
        SignedIn callavere = written.organisation().join("Rhosyn Callavere", Role.VISITOR);
        LocalDate today = LocalDate.ofInstant(Instant.now(), ZoneId.of("Europe/London"));
        written.in(() -> visitors.give(
                        written.director(),
                        written.organisation().programme().id(),
                        new VisitorRequest(
                                callavere.personId(),
                                "Accreditation visit",
                                List.of(written.trainee().personId()),
                                List.of(),
                                today,
                                today.plusDays(3)))
                .orThrow());
        return new Scene(written, open, decided, callavere);
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void aVisitorGetsFromADecisionToASignedSheetInFiveClicks() {
        logIn(visitor);
        int clicks = 0;
        page.navigate("http://localhost:" + port + "/decisions");
        page.locator("main .link-list a").first().click();
        clicks++;
        assertThat(page.url()).contains("/decisions/" + decision.id());
        page.locator("main a[href$='" + evidence + "']").first().click();
        clicks++;
        assertThat(page.url()).endsWith(evidence);
        page.locator("#records tbody th a").first().click();
        clicks++;
        page.waitForURL(Pattern.compile(".*/signed/[0-9a-f-]{36}$"));
        assertThat(page.locator("main").innerText()).contains("Fenna Hallinor");
        assertThat(clicks).isLessThanOrEqualTo(5);
    }

    @Test
    void theCommitteesPagesAreAccessibleAndFitAPhone() {
        logIn(board.chair());
        look("/meetings", "meetings");
        look("/meetings/" + meeting.id(), "meeting");
        look(evidence, "evidence");
        look(evidence + "/decision", "decision-form");
        look("/decisions/" + decision.id(), "decision");
        context.clearCookies();
        logIn(board.director());
        look("/decisions-due", "decisions-due");
        look("/meetings/new?programme=" + board.organisation().programme().id(), "meeting-plan");
    }

    @Test
    void theTraineesPagesAreAccessibleAndFitAPhone() {
        logIn(board.trainee());
        look("/decisions", "decisions");
        look("/decisions/" + decision.id() + "/letter", "letter");
        look("/decisions/" + decision.id() + "/appeal", "appeal");
    }

    /** Narrow in the light and wide in the dark tell what each of the four would. */
    private void look(String path, String name) {
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            int width = scheme == ColorScheme.LIGHT ? 360 : 1280;
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            page.setViewportSize(width, 800);
            page.navigate("http://localhost:" + port + path);
            Axe.assertNoViolations(page);
            assertThat(page.evaluate("() => document.documentElement.scrollWidth"))
                    .as("%s at %d", path, width)
                    .isEqualTo(width);
            page.screenshot(new Page.ScreenshotOptions()
                    .setFullPage(true)
                    .setPath(Path.of("target", "committee", name + "-" + width + ".png")));
        }
    }

    private void logIn(SignedIn who) {
        page.navigate("http://localhost:" + port + "/login");
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(Pattern.compile("^(?!.*/login).*$"));
        page.waitForLoadState();
    }
}
