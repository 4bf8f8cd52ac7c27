package org.scrubline.audit.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.SelectOption;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Axe;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.reference.ReferenceCases;
import org.scrubline.casework.reference.ReferenceDraft;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** A director lets a visitor in, the visitor reads, the trainee sees it: the pages of oversight in a browser. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class, History.class})
class OversightIT {

    /** Colours hang on the theme and sizes on the width, so the two diagonal pairs see all four values. */
    private static final Map<ColorScheme, Integer> VIEWS = Map.of(ColorScheme.LIGHT, 360, ColorScheme.DARK, 1280);

    private static final String CHANGE = "/rubrics/changes/TRAB_FORNIX";

    private static final Instant ENDED = Instant.now().minus(Duration.ofDays(5));

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    ReferenceCases references;

    TestOrganisation organisation;
    SignedIn director;
    SignedIn visitor;
    SignedIn hallinor;
    SignedIn supervisor;
    SignedSheet signed;
    BrowserContext context;
    Page page;

    @BeforeEach
    void signASheet() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        visitor = organisation.join("Rhosyn Callavere", Role.VISITOR);
        hallinor = organisation.join("Fenna Hallinor", Role.TRAINEE);
        organisation.join("Brisa Tekmor", Role.TRAINEE);
        supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        organisation.join("Hesper Vantrelle", Role.SUPERVISOR);
        organisation.join("Thaddeus Quillmere", Role.COMMITTEE_MEMBER);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        signed = history.signed(organisation, hallinor, supervisor, ENDED, Map.of("TF09", 2));
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setJavaScriptEnabled(true));
        page = context.newPage();
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void aVisitIsGivenUsedSeenAndEnded() {
        enter(hallinor);
        look("/seen", "seen-empty");
        enter(visitor);
        look("/visits", "visits-empty");

        enter(director);
        look("/visitors", "visitors-empty");
        page.evaluate("() => document.querySelector('main form').noValidate = true");
        page.locator("main form .button-main").click();
        assertThat(page.locator(".error-summary").innerText()).contains("Choose a visitor of this programme.");
        look(null, "visitors-unfilled");
        give();
        look("/visitors", "visitors");

        enter(visitor);
        look("/visits", "visits");
        page.getByText("Fenna Hallinor").click();
        assertThat(page.locator("h1").innerText()).contains("Fenna Hallinor");
        page.navigate(address("/signed/" + signed.id()));
        assertThat(page.locator("main").innerText()).contains("Ottilie Brannock");

        enter(hallinor);
        look("/seen", "seen");
        assertThat(page.locator("#seen").innerText()).contains("Rhosyn Callavere", "Accreditation visit, autumn");

        enter(director);
        page.navigate(address("/visitors"));
        page.getByText("End now").click();
        assertThat(page.locator("[role=status]").first().innerText()).contains("closed to this visitor");
        enter(visitor);
        assertThat(page.navigate(address("/signed/" + signed.id())).status()).isEqualTo(404);
    }

    @Test
    void whatWasDoneAndHowLongItIsKeptCanBeRead() {
        enter(director);
        page.navigate(address("/cohort"));
        page.navigate(address("/signed/" + signed.id()));
        look("/done", "done");
        page.locator("select[name=action]").selectOption("sheet-signed");
        page.locator("main form .button-main").click();
        assertThat(page.locator("#done tbody tr").count()).isEqualTo(1);
        look("/done?action=sheet-handed-on", "done-narrowed-empty");
        look("/done?from=x&until=y", "done-unreadable");

        look("/retention", "retention-empty");
        page.locator("select[name=trainee]").selectOption("Fenna Hallinor");
        page.locator("textarea[name=reason]").fill("A contest about one case is open until the spring.");
        page.locator("main .button-main").click();
        assertThat(page.locator("[role=status]").first().innerText()).contains("The hold is set.");
        look("/retention", "retention");
    }

    @Test
    void aRubricChangesOnThePagesAndExpertsAreAsked() {
        enter(director);
        look(CHANGE, "rubric-draft-none");
        page.getByText("Begin a draft").click();
        Locator source = page.locator("textarea[name=source]");
        String begun = source.inputValue();
        source.fill(begun.replaceFirst("critical: true", "critical: perhaps"));
        page.getByText("Save the draft").click();
        look(null, "rubric-draft-faulty");
        source.fill(begun.replace("version: \"1.0\"", "version: \"1.1\"")
                .replaceFirst("name: .*", "name: Quite another step"));
        page.getByText("Save the draft").click();
        look(CHANGE, "rubric-draft");
        look(CHANGE + "/compare", "rubric-compare-unreviewed");

        look("/rubrics/rounds", "rounds-empty");
        page.evaluate("() => document.querySelector('main form').noValidate = true");
        page.locator("main form .button-main").click();
        look(null, "rounds-unfilled");

        enter(supervisor);
        page.navigate(address(CHANGE + "/compare"));
        page.locator("input[name=answer][value=agree]").check();
        page.locator("textarea[name=words]").fill("Read against five of my last forms.");
        look(null, "rubric-review");
        page.locator("main form .button-main").click();
        enter(director);
        look(CHANGE + "/compare", "rubric-compare-agreed");
    }

    @Test
    void anExpertAnswersARound() {
        enter(director);
        page.navigate(address("/rubrics/rounds"));
        page.locator("select[name=about]").selectOption(new SelectOption().setIndex(1));
        page.locator("input[name=day]")
                .fill(LocalDate.now(ZoneId.of("Europe/London")).plusDays(7).toString());
        page.locator("input[name=experts]").all().forEach(Locator::check);
        page.locator("main form .button-main").click();
        assertThat(page.locator("[role=status]").first().innerText()).contains("The round is open");
        look("/rubrics/rounds", "rounds");
        enter(supervisor);
        page.navigate(address("/rubrics/rounds"));
        page.locator("main .link-list a").first().click();
        look(null, "round");
    }

    @Test
    void aReferenceCaseIsAddedScoredAndReadAgain() {
        enter(director);
        look("/reference-cases", "reference-cases-empty");
        look("/cohort/reference", "reference-scores-few");
        page.navigate(address("/reference-cases"));
        page.locator("main form .button-main").click();
        assertThat(page.locator(".error-summary").innerText()).contains("Choose the band of the case.");
        look(null, "reference-cases-unfilled");
        page.locator("input[name=reference]").fill("REF-1");
        page.locator("input[name=title]").fill("An even flap");
        page.locator("select[name=procedure]").selectOption(Procedures.TRAB_FORNIX);
        page.locator("select[name=band]").selectOption("B");
        page.locator("textarea[name=film]").fill("Teaching drive, folder of flaps.");
        page.locator("input[name=closesOn]")
                .fill(LocalDate.now(ZoneId.of("Europe/London")).plusDays(7).toString());
        page.locator("main form .button-main").click();
        assertThat(page.locator("[role=status]").first().innerText()).contains("The reference case is added.");
        look(null, "reference-case-open");
        String path = page.url();

        enter(supervisor);
        look("/my-scoring/reference", "my-reference-scores-few");
        page.navigate(path);
        page.locator("input[name='level.TF01'][value='4']").press("Space");
        look(null, "reference-case-scoring");
        page.locator("input[name=rest]").press("Space");
        page.locator("main form .button-main").click();
        assertThat(page.locator("#own-scores").innerText()).contains("not seen");
        look(null, "reference-case-scored");
        look("/reference-cases", "reference-cases");

        compareFour();
        look("/my-scoring/reference", "my-reference-scores");
        enter(director);
        look("/cohort/reference", "reference-scores");
    }

    /** Four supervisors score two more cases of many steps, and the director closes them. */
    private void compareFour() {
        List<SignedIn> four = new ArrayList<>(List.of(supervisor));
        for (String name : List.of("Anneke Tolvarin", "Ludo Karsenmark", "Ines Quorral")) {
            four.add(organisation.join(name, Role.SUPERVISOR));
        }
        String day = LocalDate.now(ZoneId.of("Europe/London")).plusDays(7).toString();
        UUID programme = organisation.programme().id();
        for (String reference : List.of("REF-2", "REF-3")) {
            ReferenceDraft draft = new ReferenceDraft(
                    reference, "A short eye", Procedures.TRAB_FORNIX, "C", "Teaching drive, folder of eyes.", day);
            UUID id = organisation
                    .in(() -> references.add(director, programme, draft))
                    .orThrow()
                    .id();
            for (SignedIn who : four) {
                Map<String, String> answers =
                        organisation.in(() -> rubrics.current(Procedures.TRAB_FORNIX)).rubric().steps().stream()
                                .collect(Collectors.toMap(
                                        Step::code,
                                        step -> who == supervisor
                                                ? step.critical() ? "2" : "3"
                                                : step.critical() ? "3" : "5"));
                organisation.in(() -> references.score(who, id, answers)).orThrow();
            }
            organisation.in(() -> {
                references.close(director, id);
                return true;
            });
        }
    }

    private void give() {
        String today = LocalDate.now(ZoneId.of("Europe/London")).toString();
        page.navigate(address("/visitors"));
        page.locator("select[name=visitor]").selectOption("Rhosyn Callavere");
        page.locator("input[name=purpose]").fill("Accreditation visit, autumn");
        page.getByText("Fenna Hallinor").click();
        page.locator("textarea[name=records]").fill(address("/signed/" + signed.id()));
        page.locator("input[name=until]").fill(today);
        page.locator("main form .button-main").click();
        assertThat(page.locator("[role=status]").first().innerText()).contains("open to Rhosyn Callavere");
    }

    private void look(@Nullable String path, String name) {
        if (path != null) {
            page.navigate(address(path));
        }
        for (Map.Entry<ColorScheme, Integer> view : VIEWS.entrySet()) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(view.getKey()));
            page.setViewportSize(view.getValue(), 800);
            Axe.assertNoViolations(page);
            assertThat(page.evaluate("() => document.documentElement.scrollWidth"))
                    .as("%s, %s", name, view)
                    .isEqualTo(view.getValue());
            page.screenshot(new Page.ScreenshotOptions()
                    .setFullPage(true)
                    .setPath(Path.of("target", "oversight", name + "-" + view.getValue() + ".png")));
        }
    }

    private void enter(SignedIn who) {
        context.clearCookies();
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(Pattern.compile("^(?!.*/login).*$"));
        page.waitForLoadState();
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }
}
