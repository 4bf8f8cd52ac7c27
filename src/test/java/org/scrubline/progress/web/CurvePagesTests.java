package org.scrubline.progress.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.scrubline.signoff.Versions;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** The competency curve on the page, from signed sheets to drawn numbers. */
@ScrublineTest
class CurvePagesTests {

    private static final Instant START =
            Instant.now().minus(Duration.ofDays(300)).truncatedTo(ChronoUnit.MINUTES);
    /** A whole percent against a coordinate of one decimal. */
    private static final Offset<Double> PRINTED = Offset.offset(.53);

    @Autowired
    private MockMvc mvc;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private History history;

    @Autowired
    private SignedSheets sheets;

    @Autowired
    private Contests contests;

    @Autowired
    private ScrublineClock clock;

    private final List<SignedIn> scorers = new ArrayList<>();
    private TestOrganisation organisation;
    private SignedIn trainee;
    private SignedIn director;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        for (String name : List.of("Ottilie Brannock", "Ludo Karsenmark", "Ismay Tolverin", "Jorun Peddelay")) {
            scorers.add(organisation.join(name, Role.SUPERVISOR));
        }
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
    }

    @Test
    void tooLittleIsOneSentenceForEachGateAndNoNumber() throws Exception {
        signed(0, 4);
        signed(1, 4);

        assertThat(curve("/progress", trainee))
                .contains("Insufficient evidence for a modelled number:")
                .contains("2 scored cases so far; 5 are needed.", "was scored twice; 3 times are needed.")
                .contains("1 scorer so far; 2 are needed.", "Engine version " + CompetencyModel.VERSION + ".")
                .doesNotContain("<svg", "<table", "Assurance", "Provisional");
    }

    @Test
    void aSheetOfWhichNoStepWasSeenLeavesThePageStanding() throws Exception {
        signed(0, History.NOT_SEEN);
        assertThat(curve("/progress", trainee)).contains("No step was scored yet.");

        signed(1, 4);
        assertThat(curve("/progress", trainee)).contains("1 scored case so far");
    }

    @Test
    void theDrawingAndTheTableSayTheSame() throws Exception {
        sixteenCasesWithATimeAway();
        String page = curve("/progress", trainee);
        page = page.substring(0, page.indexOf("id=\"curve-next\""));
        List<double[]> rows = DrawnCurve.rows(page);

        assertThat(rows).hasSize(16);
        assertThat(DrawnCurve.pieces(page)).as("broken once").hasSize(2);
        List<Double> drawn = DrawnCurve.line(page);
        for (int i = 0; i < 16; i++) {
            assertThat(drawn.get(i)).isCloseTo(rows.get(i)[0], PRINTED);
            assertThat(rows.get(i)[1]).isLessThan(rows.get(i)[0]);
            assertThat(rows.get(i)[2]).isGreaterThan(rows.get(i)[0]);
        }
        List<Double> around = DrawnCurve.band(page);
        assertThat(around).hasSize(32);
        assertThat(around.get(0)).as("upper edge first").isCloseTo(rows.get(0)[2], PRINTED);
        assertThat(around.get(31)).as("lower edge back").isCloseTo(rows.get(8)[1], PRINTED);
        assertThat(page).contains("90 days away", "16 scored cases in order");
    }

    @Test
    void aContestedCaseKeepsItsPlaceWithADiamondAndItsWord() throws Exception {
        sixteenCasesWithATimeAway();
        SignedSheet last =
                organisation.in(() -> sheets.ofTrainee(trainee.personId())).get(15);
        String before = curve("/progress", trainee);
        clock.at(
                last.signedAt().plus(Duration.ofDays(1)),
                () -> organisation.in(() -> contests.open(
                                trainee,
                                last.id(),
                                List.of(),
                                Versions.Signature.byPassword(
                                        "I did these steps alone, all of them.", TestOrganisations.PASSWORD))
                        .orThrow()));

        String page = curve("/progress", trainee);
        assertThat(page.split("<polygon class=\"contested\"", -1)).hasSize(2);
        assertThat(page).contains(">contested</text>", ">16, contested</a>");
        assertThat(DrawnCurve.line(page)).isEqualTo(DrawnCurve.line(before));
        assertThat(before).doesNotContain("contested");
    }

    @Test
    void numbersStandWithTheirMeaningAndCautions() throws Exception {
        sixteenCasesWithATimeAway();

        for (String page : List.of(curve("/progress", trainee), curve("/progress/" + trainee.personId(), director))) {
            assertThat(page)
                    .contains("Adjusted for case difficulty and scorer habit; raw scores stand beside it.")
                    .contains("Supports, does not replace, the judgement of licensed supervisors and local policy.")
                    .contains("The scores remove 83 % of what would be unknown")
                    .contains("all critical steps at 4 or 5, in 50 of 100 cases", "Assurance")
                    .contains(
                            "Engine version " + CompetencyModel.VERSION + ". Signed sheets up to",
                            "Programme values from 16 signed sheets")
                    .contains("start values from simulated programmes")
                    .containsPattern("evidence supports|does not yet support|insufficient evidence")
                    .doesNotContain("??", "readiness", "Readiness", "entrust");
        }
    }

    @Test
    void fewCasesAreProvisionalAndSupportNoProposal() throws Exception {
        for (int i = 0; i < 6; i++) {
            history.signed(organisation, trainee, scorers.get(i % 2), START.plus(Duration.ofDays(7L * i)), Map.of());
        }

        assertThat(curve("/progress", trainee))
                .contains("Provisional: the scores remove", "<td>insufficient evidence</td>")
                .contains("6 scored cases so far; 12 are needed.", "2 scorers so far; 4 are needed.")
                .contains("One scorer gave 50 % of the sheets; at most 40 % may come from one.")
                .doesNotContain("evidence supports</td>");
    }

    @Test
    void aNewlySignedSheetChangesTheCurveAtTheNextView() throws Exception {
        sixteenCasesWithATimeAway();
        List<double[]> before = DrawnCurve.rows(curve("/progress", trainee));
        signed(40, 1);

        String page = curve("/progress", trainee);

        assertThat(page).contains("17 scored cases in order", "Programme values from 16 signed sheets");
        assertThat(DrawnCurve.rows(page).get(15)[0]).isLessThan(before.get(15)[0]);
    }

    @Test
    void everyStepIsAPictureAndTheTableSaysTheSame() throws Exception {
        sixteenCasesWithATimeAway();
        String page = curve("/progress", trainee);

        int steps = organisation
                .in(() -> rubrics.current(Procedures.TRAB_FORNIX))
                .rubric()
                .steps()
                .size();
        assertThat(DrawnSteps.pictures(page)).hasSize(steps);
        DrawnSteps drawn = DrawnSteps.of(page, "TF09");
        assertThat(drawn.cells()).hasSize(16);
        assertThat(drawn.pieces()).as("broken once").isEqualTo(2);
        for (int i = 0; i < 16; i++) {
            DrawnSteps.Cell cell = drawn.cells().get(i);
            assertThat(drawn.line().get(i)).isCloseTo(cell.chance(), Offset.offset(1.3));
            assertThat(drawn.band().get(i < 8 ? i : i + 8)).isCloseTo(cell.high(), Offset.offset(1.3));
            assertThat(cell.low()).isLessThan(cell.chance());
        }
        assertThat(drawn.cells().stream().filter(cell -> cell.level() >= 4).count())
                .isEqualTo(drawn.strokesAtTheTop());
        assertThat(drawn.cells().stream().filter(cell -> cell.level() < 4).count())
                .isEqualTo(drawn.strokesAtTheFoot())
                .isEqualTo(3);
        assertThat(page).contains("Lamellar dissection (critical)</figcaption>");
    }

    @Test
    void furtherCasesStandAsARangeForEachStandard() throws Exception {
        sixteenCasesWithATimeAway();

        assertThat(curve("/progress", trainee))
                .contains("In how many further typical cases the evidence might support each standard")
                .containsPattern("<li>all critical steps at 4 or 5, in 50 of 100 cases: "
                        + "(the evidence might support this in about|the chance wanted may|the number of further"
                        + "|evidence supports)");
    }

    @Test
    void aStepSeldomSeenAndLowSaysThatTheModelDrawsItToTheUsual() throws Exception {
        for (int i = 0; i < 12; i++) {
            Instant ended = START.plus(Duration.ofDays(7L * i));
            int level = i % 4 == 0 ? 3 : History.NOT_SEEN;
            history.signed(organisation, trainee, scorers.get(i % 4), ended, Map.of("TF02", level));
        }

        assertThat(curve("/progress", trainee))
                .contains("0 % (0 of 3)", "Lower than expected: the model draws 3 scores towards what is usual");
    }

    @Test
    void aHundredCasesStayUnder300Kilobytes() throws Exception {
        for (int i = 0; i < 100; i++) {
            Instant ended = START.plus(Duration.ofDays(2L * i));
            history.signed(organisation, trainee, scorers.get(i % 4), ended, Map.of("TF09", 2 + i % 4));
        }

        byte[] page = mvc.perform(get("/progress").with(LogIn.as(trainee)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();

        assertThat(DrawnSteps.pictures(new String(page, StandardCharsets.UTF_8)))
                .hasSize(19);
        assertThat(page.length).isLessThan(300_000);
    }

    /** Eight cases a week apart, 90 days away, eight more; four scorers in turn. */
    private void sixteenCasesWithATimeAway() {
        for (int i = 0; i < 8; i++) {
            history.signed(organisation, trainee, scorers.get(i % 4), START.plus(Duration.ofDays(7L * i)), Map.of());
        }
        for (int i = 0; i < 8; i++) {
            history.signed(
                    organisation,
                    trainee,
                    scorers.get(i % 4),
                    START.plus(Duration.ofDays(49 + 90 + 7L * i)),
                    Map.of("TF09", 3 + i % 3));
        }
    }

    private void signed(int week, int level) {
        Map<String, Integer> levels = new HashMap<>();
        organisation.in(() -> rubrics.current(Procedures.TRAB_FORNIX)).rubric().steps().stream()
                .map(Step::code)
                .forEach(code -> levels.put(code, level));
        history.signed(organisation, trainee, scorers.get(0), START.plus(Duration.ofDays(7L * week)), levels);
    }

    /** The section of the curve alone. */
    private String curve(String address, SignedIn who) throws Exception {
        String page = mvc.perform(get(address).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
        int from = page.indexOf("<section class=\"section\" id=\"curve\"");
        return page.substring(from, page.indexOf("</section>", from));
    }
}
