package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** Hostile text in names and in every sentence people write, read in a real browser by everyone who may. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"spring.datasource.url=test", "scrubline.jobs.enabled=false"})
@Import({TestDatabase.class, TestOrganisations.class})
class HostileTextIT {

    private static final String COUNT_VIOLATIONS =
            "document.addEventListener('securitypolicyviolation', (e) => { window.canary = true; });";

    @LocalServerPort
    int port;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheets;

    @Autowired
    SigningFixture fixture;

    @Autowired
    Signing signing;

    @Autowired
    SignedRecords records;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn director;
    SignedSheet signed;
    BrowserContext context;
    final List<String> dialogs = new ArrayList<>();

    @BeforeEach
    void writeEverywhere() {
        Theatre quiet = sheets.theatre(organisations);
        theatre = new Theatre(
                quiet.organisation(),
                quiet.organisation().join("Ottilie <img src=x onerror=window.canary=true> Brannock", Role.SUPERVISOR),
                quiet.organisation().join("Fenna \" data-canary=\"1 Hallinor", Role.TRAINEE));
        director = theatre.organisation().join("Delmarr </title><x-canary>", Role.DIRECTOR);
        UUID id = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(3)));
        fixture.change(
                theatre,
                id,
                new SheetChange.SetFeedback(
                        "<svg onload=window.canary=true> steady hands", "' data-canary='1 hold the flap flatter"));
        signed = theatre.organisation()
                .in(() ->
                        signing.signWithoutCredential(theatre.supervisor(), id).orThrow());
        HostileText.payloads()
                .forEach(text -> theatre.organisation()
                        .in(() -> records.remark(theatre.trainee(), signed.id(), text)
                                .orThrow()));
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void everyTextIsShownAsTextAndNothingRuns() {
        Page page = open(theatre.trainee());
        read(
                page,
                "/signed/" + signed.id(),
                "/feedback",
                "/progress",
                "/my-cases",
                "/signed/" + signed.id() + "/contest");
        page.navigate(address("/signed/" + signed.id()));
        String shown = page.locator("main").innerText();
        assertThat(HostileText.payloads()).allSatisfy(text -> assertThat(shown).contains(text));
        print(page.request()
                .get(address("/signed/" + signed.id() + "/record.pdf"))
                .body());
        context.close();

        read(open(theatre.supervisor()), "/to-score", "/signed", "/signed/" + signed.id(), "/seen");
        context.close();

        String trainee = theatre.trainee().personId().toString();
        read(
                open(director),
                "/cohort",
                "/progress/" + trainee,
                "/progress/" + trainee + "/steps/TF09?procedure=TRAB_FORNIX",
                "/signed/" + signed.id(),
                "/open-signatures",
                "/visitors",
                "/retention",
                "/settings",
                "/done",
                "/evidence");
    }

    /** On paper, too, it is text: read back by a library of others, and nothing in the file runs or leads away. */
    private static void print(byte[] pdf) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", "");
            assertThat(text)
                    .contains(
                            "<imgsrc=xonerror=window.canary=true>Brannock",
                            "<svgonload=window.canary=true>steadyhands");
            assertThat(document.getDocumentCatalog().getOpenAction()).isNull();
            for (PDPage page : document.getPages()) {
                assertThat(page.getAnnotations()).isEmpty();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void read(Page page, String... paths) {
        for (String path : paths) {
            int status = page.navigate(address(path)).status();
            assertThat(status).as(path).isEqualTo(200);
            assertThat((boolean) page.evaluate(HostileText.RAN))
                    .as("%s ran something", path)
                    .isFalse();
            assertThat(dialogs).as(path).isEmpty();
        }
    }

    private Page open(SignedIn who) {
        context = Chromium.browser().newContext(new Browser.NewContextOptions().setViewportSize(360, 800));
        context.addInitScript(COUNT_VIOLATIONS);
        Page page = context.newPage();
        page.onDialog(dialog -> {
            dialogs.add(dialog.message());
            dialog.dismiss();
        });
        page.navigate(address("/login"));
        page.locator("input[name=username]").fill(who.username());
        page.locator("input[name=password]").fill(TestOrganisations.PASSWORD);
        page.locator("main button[type=submit]").click();
        page.waitForURL(url -> !url.endsWith("/login"));
        return page;
    }

    private String address(String path) {
        return "http://localhost:" + port + path;
    }
}
