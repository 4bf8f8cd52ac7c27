package org.scrubline.table;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.PlaywrightException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.browser.Chromium;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
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
