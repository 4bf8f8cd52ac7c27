package org.scrubline.cohort.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Reflections;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.TraineeCase;
import org.scrubline.outcome.Entering;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.OutcomeEntry;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.Outcomes;
import org.scrubline.outcome.Pressure;
import org.scrubline.outcome.Visit;
import org.scrubline.people.ExposurePlans;
import org.scrubline.people.PlacementEntry;
import org.scrubline.people.Placements;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.History;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.scrubline.training.TrainingDraft;
import org.scrubline.training.TrainingRecords;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** The pages of numbers in a browser: a trainee's own and the director's. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class, History.class})
class NumbersIT {

    private static final Instant START = Instant.now().minus(Duration.ofDays(330));

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    Reflections reflections;

    @Autowired
    Placements placements;

    @Autowired
    ExposurePlans plans;

    @Autowired
    TrainingRecords training;

    @Autowired
    Cases cases;

    @Autowired
    Outcomes outcomes;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn hallinor;
    SignedIn brannock;
    BrowserContext context;
    Page page;

    @BeforeEach
    void writeAYear() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        hallinor = organisation.join("Fenna Hallinor", Role.TRAINEE);
        SignedIn tekmor = organisation.join("Brisa Tekmor", Role.TRAINEE);
        organisation.join("Mirela Draymoor", Role.TRAINEE);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        brannock = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        List<SignedIn> scorers = List.of(
                brannock,
                organisation.join("Ludo Karsenmark", Role.SUPERVISOR),
                organisation.join("Hesper Vantrelle", Role.SUPERVISOR),
                organisation.join("Anneke Tolvarin", Role.SUPERVISOR));
        for (int i = 0; i < 18; i++) {
            int day = i < 14 ? 10 * i : 10 * i + 90;
            Map<String, Integer> levels = Map.of(
                    "TF03", i % 4 == 0 ? 5 : 4,
                    "TF09", i == 1 || i == 14 ? 2 : i % 3 == 0 ? 4 : 3,
                    "TF15", i < 6 ? 3 : 5,
                    "TF18", i % 5 == 0 ? 3 : 4);
            history.signed(organisation, hallinor, scorers.get(i % 4), START.plus(Duration.ofDays(day)), levels);
        }
        for (int i = 0; i < 3; i++) {
            history.signed(organisation, tekmor, scorers.get(0), START.plus(Duration.ofDays(9L * i)), Map.of());
        }
        history.waiting(organisation, tekmor, scorers.get(1), START.plus(Duration.ofDays(40)));
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 740));
        page = context.newPage();
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void theTraineesPagesAreAccessibleAndFitAPhone() {
        logIn(hallinor);
        look("/progress", "progress");
        look("/progress?step=TF09", "progress-step");
        look("/progress/" + hallinor.personId() + "/steps/TF09?procedure=TRAB_FORNIX", "step");
        organisation.in(() -> reflections
                .write(hallinor, "TRAB_FORNIX", "TF09", "Slow down before the second cut.")
                .orThrow());
        look("/reflections?procedure=TRAB_FORNIX&step=TF09", "reflections");
        look("/my-answers", "my-answers");
    }

    @Test
    void theDirectorsPageIsAccessibleAndFitsAPhone() {
        logIn(director);
        look("/cohort", "cohort");
        look("/cohort?procedure=NEEDLING", "cohort-empty");
        look("/cohort/signals", "signals");
    }

    @Test
    void thePagesOfOutcomesAreAccessibleAndFitAPhone() {
        UUID seen = follow();
        logIn(director);
        look("/outcomes", "outcomes");
        look("/outcomes/" + seen, "outcome");
        look("/outcomes/programme", "outcomes-programme");
        look("/outcomes/programme/cases?trainee=" + hallinor.personId(), "outcomes-cases");
    }

    /** Two eyes whose visits are known, one within the limits and one not. */
    private UUID follow() {
        List<TraineeCase> operated = organisation.in(() -> cases.ofTrainee(hallinor.personId()));
        for (int i = 0; i < 2; i++) {
            SurgicalCase one = operated.get(operated.size() - 1 - i).surgicalCase();
            LocalDate day = LocalDate.ofInstant(one.endedAt(), one.endedZone());
            List<Entering> all = new ArrayList<>(List.of(Entering.of(
                    new Baseline(day.minusDays(1), new Pressure(26, 3), 8), OutcomeEntry.Source.CLINIC_LETTER)));
            for (FollowUp window : List.of(FollowUp.W1, FollowUp.M3, FollowUp.M6)) {
                all.add(Entering.of(
                        new Visit(
                                window.due(day),
                                new Pressure(12 + 12 * i, i),
                                Visit.Chamber.DEEP,
                                Visit.LeakTest.LEAKS,
                                Visit.Bleb.SPREAD,
                                false,
                                null,
                                Set.of(Visit.Care.SUTURE_RELEASE),
                                false,
                                false,
                                Visit.SeenBy.OPERATOR),
                        OutcomeEntry.Source.CLINIC_LETTER));
            }
            organisation.in(() -> outcomes.enterAll(director, one.id(), all).orThrow());
        }
        return operated.get(operated.size() - 1).surgicalCase().id();
    }

    @Test
    void howSupervisorsScoreIsAccessibleAndFitsAPhone() {
        for (String name : List.of("Kavi Balcairn", "Lorenz Quellan")) {
            SignedIn trainee = organisation.join(name, Role.TRAINEE);
            history.signed(organisation, trainee, brannock, START.plus(Duration.ofDays(50)), Map.of());
        }
        logIn(director);
        look("/cohort/scorers", "scorers");
        context.clearCookies();
        logIn(brannock);
        look("/my-scoring", "my-scoring");
    }

    @Test
    void thePagesOfTrainingAreAccessibleAndFitAPhone() {
        PlacementEntry entry = new PlacementEntry(
                hallinor.personId().toString(), organisation.site().id().toString(), "2026-01-05", "2027-01-04", "60");
        organisation.in(() ->
                placements.place(director, organisation.programme().id(), entry).orThrow());
        organisation.in(() -> training.write(
                        hallinor,
                        hallinor.personId(),
                        new TrainingDraft("WET_LAB", "FLAP", "2026-02-01", "Four times."))
                .orThrow());
        logIn(director);
        look("/training", "training");
        look("/placements?from=2026-01", "placements");
        look("/exposure-plan/TRABECULECTOMY", "plan-family");
        organisation.in(() -> plans.plan(
                        director, organisation.programme().id(), "TRABECULECTOMY", Map.of(ExposurePlans.field(1), "2"))
                .orThrow());
        look("/cohort/exposure", "exposure");
        look("/cohort/exposure/cases?family=TRABECULECTOMY&trainee=" + hallinor.personId(), "exposure-cases");
        look("/open-sheets/" + brannock.personId(), "open-sheets-of");
        context.clearCookies();
        logIn(brannock);
        look("/training/" + hallinor.personId(), "training-record");
    }

    @Test
    void theTablesOnGroupsAreAccessibleAndFitAPhone() {
        logIn(organisation.join("Tamsin Oderlake", Role.ANALYST));
        look("/cohort/equality", "equality");
    }

    /** Colours hang on the theme and sizes on the width, so the two diagonal pairs see all four values. */
    private void look(String path, String name) {
        show(path, ColorScheme.LIGHT, 320);
        show(path, ColorScheme.LIGHT, 360);
        Axe.assertNoViolations(page);
        picture(name + "-360-LIGHT");
        show(path, ColorScheme.DARK, 1280);
        Axe.assertNoViolations(page);
        picture(name + "-1280-DARK");
    }

    private void show(String path, ColorScheme scheme, int width) {
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
        page.setViewportSize(width, 800);
        page.navigate("http://localhost:" + port + path);
        assertThat(page.evaluate("() => document.documentElement.scrollWidth"))
                .as("%s at %d", path, width)
                .isEqualTo(width);
    }

    private void picture(String name) {
        page.screenshot(
                new Page.ScreenshotOptions().setFullPage(true).setPath(Path.of("target", "numbers", name + ".png")));
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
