package org.scrubline.table;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.Cases;
import org.scrubline.casework.SelfScores;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.TestProgramme;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** A browser killed at once after a tap is said to be kept: the tap is there when it starts again, without a network. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class KilledBrowserIT {

    /** Taps after which the browser is killed; the benchmark profile takes every one from 1 to 25. */
    private static final List<Integer> KILLS = Boolean.getBoolean("scrubline.test.every-kill")
            ? IntStream.rangeClosed(1, 25).boxed().toList()
            : List.of(1, 4);

    @LocalServerPort
    int port;

    @Autowired
    Sheets sheets;

    @Autowired
    Cases cases;

    @Autowired
    SelfScores selfScores;

    @Autowired
    Rubrics rubrics;

    @Autowired
    SheetFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @TempDir
    Path profile;

    @Test
    void everyTapSaidToBeKeptIsThereAfterTheBrowserWasKilled() {
        Theatre theatre = fixture.theatre(organisations);
        UUID id = fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        try (Wire wire = new Wire(port)) {
            Assessor first = start(wire).logIn(theatre.supervisor()).setUp(Assessor.PHRASE, 1);
            kill(first);
            int tapped = 0;
            wire.cut();
            for (int kill : KILLS) {
                Assessor assessor = start(wire).come().unlock(Assessor.PHRASE).openTheSheet();
                assertThat(assessor.stored("taps")).isEqualTo(tapped);
                for (int tap = 0; tap < kill; tap++) {
                    assessor.answer(step(tap), level(kill + tap)).sees(step(tap), "kept");
                    tapped++;
                }
                kill(assessor);
            }
            wire.mend();
            Assessor last = start(wire).logIn(theatre.supervisor()).come().unlock(Assessor.PHRASE);
            int all = tapped;
            Page.WaitForConditionOptions patiently =
                    new Page.WaitForConditionOptions().setTimeout(30_000 + 1_000.0 * all);
            last.page().waitForCondition(() -> version(theatre, id) == all, patiently);
            last.page().waitForCondition(() -> last.stored("taps") == 0, patiently);
            kill(last);
            System.out.println("Browsers killed: " + KILLS.size() + ", taps kept and sent: " + all);
        }
    }

    @Test
    void aHalfTypedCaseIsThereAfterTheBrowserWasKilledAndGoesOutOnceKept() {
        TestProgramme here = TestProgramme.open(organisations.open(), rubrics);
        try (Wire wire = new Wire(port)) {
            CaseWriter first = new CaseWriter(start(wire).logIn(here.trainee()), here).setUp();
            wire.cut();
            first.begin().answerAll().reference("K7-204").level("TF01", 4).seesDraftKept();
            kill(first.device());
            CaseWriter second = new CaseWriter(start(wire).come().unlock(Assessor.PHRASE), here).sees("draft", 1);
            second.page().locator("#case-list a").click();
            assertThat(second.page().locator("#reference").inputValue()).isEqualTo("K7-204");
            second.keep().sees("waiting", 1);
            kill(second.device());
            wire.mend();
            CaseWriter last =
                    new CaseWriter(start(wire).logIn(here.trainee()).come().unlock(Assessor.PHRASE), here);
            last.sees("received", 1);
            UUID trainee = here.trainee().personId();
            UUID id = here.organisation()
                    .in(() -> cases.ofTrainee(trainee))
                    .get(0)
                    .surgicalCase()
                    .id();
            assertThat(here.organisation().in(() -> selfScores.of(id, trainee))).isEqualTo(Map.of("TF01", 4));
            kill(last.device());
        }
    }

    /** A queue that tries again speaks of its first tap; the same step may have a newer one that nobody has kept yet. */
    @Test
    void nothingIsSaidToBeKeptWhileTheNewestTapOfItsStepIsStillBeingSaved() {
        Theatre theatre = fixture.theatre(organisations);
        fixture.open(theatre, Procedures.TRAB_FORNIX, Instant.now());
        try (Wire wire = new Wire(port)) {
            Assessor assessor = start(wire)
                    .logIn(theatre.supervisor())
                    .setUp(Assessor.PHRASE, 1)
                    .openTheSheet();
            assertThat(assessor.page().evaluate("""
                            async () => {
                              const { sheetView } = await import("/js/offline/sheet-view.js");
                              const view = sheetView(document.getElementById("sheet"));
                              const taps = { first: { id: "1", fields: { "step.TF01": "4" } }, second: { id: "2", fields: { "step.TF01": "2" } } };
                              const mark = () => document.querySelector("#step-TF01 .save-state").dataset.state;
                              return [["first", "saving"], ["first", "kept"], ["second", "saving"], ["first", "kept"],
                                ["first", "refused"], ["first", "kept"], ["second", "kept"], ["first", "saved"]]
                                .map(([tap, state]) => { view.state(taps[tap], state); return mark(); });
                            }
                            """))
                    .isEqualTo(List.of("saving", "kept", "saving", "saving", "refused", "refused", "kept", "saved"));
            kill(assessor);
        }
    }

    /** Each tap changes what the tap before on the same step said, in this round or the last, so each makes a version. */
    private static String level(int number) {
        return String.valueOf(1 + number % 5);
    }

    private static String step(int tap) {
        return "TF%02d".formatted(1 + tap % 19);
    }

    private int version(Theatre theatre, UUID id) {
        return theatre.organisation().in(() -> sheets.get(id)).lockVersion();
    }

    private Assessor start(Wire wire) {
        BrowserContext context = Chromium.persistent(profile);
        return new Assessor(wire, context);
    }

    /** As an empty battery would end it. The profile's path names the processes, and no others. */
    private void kill(Assessor assessor) {
        ProcessHandle.allProcesses()
                .filter(process -> process.info().commandLine().orElse("").contains(profile.toString()))
                .forEach(ProcessHandle::destroyForcibly);
        try {
            assessor.close();
        } catch (PlaywrightException e) {
            // The browser it would close is gone, which is the point.
        }
    }
}
