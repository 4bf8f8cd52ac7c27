package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
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
import org.scrubline.provision.ProvisionTokens;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

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
    ProvisionTokens tokens;

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
        HostilePaper.shows(
                page.request()
                        .get(address("/signed/" + signed.id() + "/record.pdf"))
                        .body(),
                List.of(
                        "<img src=x onerror=window.canary=true> Brannock",
                        "<svg onload=window.canary=true> steady hands"));
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

    /** A directory names people as it likes: each name is either refused in its own words or shown as text. */
    @Test
    void theNamesADirectorySendsAreShownAsText() throws Exception {
        SignedIn administrator = theatre.organisation().join("Pell Ormandine", Role.ADMINISTRATOR);
        String token = theatre.organisation().in(() -> tokens.make("directory").orThrow());
        List<String> taken = new ArrayList<>();
        for (int i = 0; i < HostileText.payloads().size(); i++) {
            String name = HostileText.payloads().get(i);
            HttpResponse<String> answer = brought(token, name, i % 2 == 0);
            if (answer.statusCode() == 201) {
                taken.add(name);
            } else {
                assertThat(answer.statusCode()).as(name).isEqualTo(400);
                assertThat(answer.body()).contains("invalidValue");
            }
        }
        assertThat(taken).hasSizeGreaterThan(30);

        Page page = open(administrator);
        read(page, "/people/provisioning", "/people", "/people/roles", "/done");
        page.navigate(address("/people/provisioning"));
        String shown = page.locator("main").innerText();
        assertThat(taken).allSatisfy(name -> assertThat(shown).contains(name));
    }

    /** As {@code displayName}, or as {@code name.formatted} (RFC 7643, section 4.1.1). */
    private HttpResponse<String> brought(String token, String name, boolean display) throws Exception {
        ObjectNode body = JsonMapper.shared().createObjectNode();
        body.put("userName", "d" + UUID.randomUUID().toString().substring(0, 12));
        if (display) {
            body.put("displayName", name);
        } else {
            body.putObject("name").put("formatted", name);
        }
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(address("/scim/v2/Users")))
                                .header("Authorization", "Bearer " + token)
                                .header("Content-Type", "application/scim+json")
                                .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
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
