package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.browser.Chromium;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.context.annotation.Import;

/** The device's twin of the sheet's rules, in the browser, says word for word what the server says. */
@SpringBootTest(webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT, properties = "spring.datasource.url=test")
@Import({TestDatabase.class, TestOrganisations.class})
class SheetTwinIT {

    private static final int SHEETS = 60;
    private static final int TAPS = 40;

    /** Follows the taps of a transcript and returns where the twin first says something else, or null. */
    private static final String FOLLOW = """
            async (text) => {
              const { tapped, eventId } = await import("/js/offline/sheet-twin.js");
              const { answer } = await import("/js/offline/sheet-answer.js");
              const { facts, start, taps, said } = JSON.parse(text);
              const sorted = (value) => JSON.stringify(value, (key, one) =>
                one && typeof one === "object" && !Array.isArray(one)
                  ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1))) : one);
              let sheet = start;
              for (const [at, fields] of taps.entries()) {
                const id = `00000000-0000-4000-8000-${String(at + 1).padStart(12, "0")}`;
                const after = tapped(facts, sheet, { fields, eventId: await eventId("%s", id) });
                sheet = after.sheet;
                const mine = sorted({ ...answer(facts, sheet), reasons: after.reasons, why: answer(facts, sheet).reasons });
                const { scrubline, tap, warnings, ...theirs } = said[at].answer;
                const yours = sorted({ ...theirs, warnings: [], reasons: said[at].reasons, why: theirs.reasons });
                if (mine !== yours) {
                  return `tap ${at + 1} ${JSON.stringify(fields)}\\n device ${mine}\\n server ${yours}`;
                }
              }
              return null;
            }
            """.formatted(SheetRun.SHEET);

    @LocalServerPort
    int port;

    @Autowired
    TapAnswers answers;

    @Autowired
    SheetWords words;

    @Autowired
    TableWords tableWords;

    @Autowired
    RubricLibrary library;

    BrowserContext context;
    Page page;

    @BeforeEach
    void open() {
        context = Chromium.browser().newContext();
        page = context.newPage();
        page.navigate("http://localhost:" + port + "/login");
    }

    @AfterEach
    void close() {
        context.close();
    }

    @Test
    void theTableHoldsOnTheDevice() {
        for (SheetTable.Row row : SheetTable.rows()) {
            assertThat(difference(SheetTable.rubric(), SheetTable.CATALOGUE, false, row.taps()))
                    .as(row.name())
                    .isNull();
        }
    }

    @Test
    void randomTapsOnEveryShippedRubricLeadToTheSameWords() {
        for (int seed = 0; seed < SHEETS; seed++) {
            String procedure = Procedures.ALL.get(seed % Procedures.ALL.size());
            Rubric rubric = library.rubric(procedure);
            RandomTaps random = new RandomTaps(seed, rubric, library.events());
            List<Map<String, String>> taps = new ArrayList<>();
            for (int number = 1; number <= TAPS; number++) {
                taps.add(random.next(number));
            }
            assertThat(difference(rubric, library.events(), seed % 2 == 0, taps))
                    .as("seed %d, %s", seed, procedure)
                    .isNull();
        }
    }

    @Test
    void aTwinThatIsWrongWouldBeFound() {
        SheetRun run = new SheetRun(SheetTable.rubric(), SheetTable.CATALOGUE, false, answers, words);
        SheetRun.Said said = run.tap(1, Map.of("step.A", "4"));
        SheetRun start = new SheetRun(SheetTable.rubric(), SheetTable.CATALOGUE, false, answers, words);
        String transcript =
                SheetRun.transcript(start.draft(), tableWords, List.of(Map.of("step.A", "5")), List.of(said));
        assertThat(page.evaluate(FOLLOW, transcript)).isNotNull();
    }

    private Object difference(
            Rubric rubric, EventCatalogue catalogue, boolean converted, List<Map<String, String>> taps) {
        SheetRun run = new SheetRun(rubric, catalogue, converted, answers, words);
        Draft start = run.draft();
        List<SheetRun.Said> said = new ArrayList<>();
        for (int i = 0; i < taps.size(); i++) {
            said.add(run.tap(i + 1, taps.get(i)));
        }
        return page.evaluate(FOLLOW, SheetRun.transcript(start, tableWords, taps, said));
    }
}
