package org.scrubline.casework.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Eye;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.casework.TestProgramme;
import org.scrubline.casework.TraineeCase;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import org.springframework.web.util.HtmlUtils;

@ScrublineTest
class CasePagesTests {

    private static final Instant NOW = Instant.parse("2026-11-03T18:40:00Z");

    @Autowired
    private MockMvc mvc;

    @Autowired
    private Cases cases;

    @Autowired
    private Sheets sheets;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private ScrublineClock clock;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;

    @BeforeEach
    void openTheProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
    }

    @Test
    void aTraineeStartsAtOwnCasesWhichSayWhyTheyAreEmpty() throws Exception {
        assertThat(answer(get("/"), here.trainee()).getRedirectedUrl()).isEqualTo("/my-cases");
        assertThat(page("/my-cases", here.trainee()))
                .contains("No case yet", "href=\"/cases/new\"", "aria-current=\"page\"");
        assertThat(answer(get("/my-cases"), here.supervisor()).getStatus()).isEqualTo(404);
    }

    @Test
    void theFormStartsWithAReferenceTheOnlySiteAndTheTimeAtTheSite() throws Exception {
        String form = page("/cases/new", here.trainee());

        assertThat(form)
                .containsPattern("name=\"reference\"\\s+value=\"[A-Z][0-9]-[0-9]{3}\"")
                .contains("value=\"2026-11-03T18:40\"", "noted in the hospital only")
                .contains("Trabeculectomy, fornix-based flap", "Dr Ottilie Brannock")
                .contains("Previous failed filter", "3 technical points", "raises the stakes")
                .contains("Reference values for teaching; not clinical instructions.")
                .containsPattern("<option value=\"[0-9a-f-]{36}\" selected=\"selected\">Sankt Orlin Eye Institute");
    }

    @Test
    void noQuestionOfTheFormAsksAboutThePatientAsAPerson() throws Exception {
        String main = page("/cases/new", here.trainee()).replaceAll("(?s).*<main|</main>.*", "");

        Set<String> asked = Pattern.compile(" name=\"([^\"]+)\"")
                .matcher(main)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toSet());

        assertThat(asked)
                .containsExactlyInAnyOrder(
                        "_csrf",
                        "programme",
                        "reference",
                        "procedure",
                        "eye",
                        "site",
                        "endedAt",
                        "supervisor",
                        "plannedSupervision",
                        "claimedPart",
                        "factors",
                        "action");
        assertThat(main)
                .as("no free text but the reference")
                .containsOnlyOnce("type=\"text\"")
                .doesNotContain("<textarea");
    }

    @Test
    void aLoggedCaseAppearsInTheListAndOnItsPage() throws Exception {
        MockHttpServletResponse sent = send("/cases/new", here.trainee(), typed -> {});
        SurgicalCase logged = only();

        assertThat(sent.getRedirectedUrl()).isEqualTo("/cases/" + logged.id());
        assertThat(logged.endedAt()).isEqualTo(Instant.parse("2026-11-03T17:10:00Z"));
        assertThat(page("/my-cases", here.trainee()))
                .contains("K7-204: Trabeculectomy, fornix-based flap", "right eye", "3 Nov 2026, 17:10 GMT")
                .contains("waiting for the score of Dr Ottilie Brannock")
                .doesNotContain("No case yet");
        assertThat(page("/cases/" + logged.id(), here.trainee()))
                .contains("Dr Ottilie Brannock is asked to score Fenna Hallinor")
                .contains("No factor: a plain first operation.", "Set after the case.", "band A")
                .doesNotContain("href=\"/sheets/");
    }

    @Test
    void theSupervisorsPageLeadsToTheSheet() throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        UUID sheet = sheetOf(only());

        assertThat(page("/cases/" + only().id(), here.supervisor())).contains("href=\"/sheets/" + sheet + "\"");
    }

    @Test
    void aSignedSheetIsLinkedAndNothingIsOfferedThatItForbids() throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        UUID sheet = sheetOf(only());
        in(() -> transaction.execute(status -> sheets.markSigned(sheet, 0)));

        assertThat(page("/cases/" + only().id(), here.trainee()))
                .contains("Dr Ottilie Brannock has scored Fenna Hallinor and signed.")
                .contains("href=\"/sheets/" + sheet + "/signed\"")
                .doesNotContain("/abandon\"", "/convert\"", "/hand-on\"");
        assertThat(page("/my-cases", here.trainee())).contains("signed by Dr Ottilie Brannock");
        assertThat(page("/cases/" + only().id() + "/self-score", here.trainee()))
                .contains("A supervisor has signed a sheet")
                .containsPattern("name=\"level.TF09\" value=\"\"")
                .doesNotContain("Keep my levels");
    }

    @Test
    void anEmptyFormSaysEverythingThatIsMissingAndKeepsWhatWasTyped() throws Exception {
        MockHttpServletResponse answer = send("/cases/new", here.trainee(), typed -> {
            for (String field :
                    List.of("procedure", "eye", "site", "supervisor", "plannedSupervision", "claimedPart")) {
                typed.remove(field);
            }
            typed.set("factors", "SCARRED");
        });

        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(text(answer))
                .contains("Choose the procedure.", "Choose the eye.", "Choose the site.", "Choose the supervisor.")
                .contains("Choose where the supervisor was meant to be.", "Choose what the trainee did.")
                .contains("href=\"#eye\"", "value=\"K7-204\"", "value=\"2026-11-03T17:10\"")
                .containsPattern("value=\"SCARRED\"\\s+checked=\"checked\"");
        assertThat(list()).isEmpty();
    }

    @Test
    void whatIsMissingAndWhatIsWrongAreSaidAtOnceInTheOrderOfTheForm() throws Exception {
        MockHttpServletResponse answer = send("/cases/new", here.trainee(), typed -> {
            typed.set("reference", "nonsense");
            typed.remove("eye");
            typed.set("supervisor", here.director().personId().toString());
            typed.set("endedAt", "2026-11-04T17:10");
            typed.set("factors", "NO_SUCH_FACTOR");
        });

        assertThat(answer.getStatus()).isEqualTo(422);
        String summary = text(answer).replaceAll("(?s).*class=\"error-summary\"|</ul>.*", "");
        assertThat(summary)
                .containsSubsequence(
                        "A reference is a letter",
                        "Choose the eye.",
                        "This end is still to come.",
                        "Choose a supervisor of this programme.",
                        "Choose complexity factors from the list.");
        assertThat(list()).isEmpty();
    }

    @Test
    void aPlannedCaseHasADayWhichCanBeChanged() throws Exception {
        MockHttpServletResponse without = send("/cases/plan", here.trainee(), typed -> {});
        assertThat(without.getStatus()).isEqualTo(422);
        assertThat(text(without)).contains("Choose the day it is planned for.");
        assertThat(page("/cases/plan", here.trainee())).contains("value=\"2026-11-04\"");
        send("/cases/plan", here.trainee(), typed -> typed.set("plannedOn", "2026-11-04"));
        String address = "/cases/" + only().id();
        assertThat(page(address, here.supervisor())).contains("planned for Wed 4 Nov 2026");
        assertThat(text(answer(post(address + "/plan").param("plannedOn", "2020-01-01"), here.trainee())))
                .contains("This day has gone by");
        answer(post(address + "/plan").param("plannedOn", "2026-11-06"), here.trainee());
        assertThat(only().plannedOn()).isEqualTo(java.time.LocalDate.of(2026, 11, 6));
    }

    @Test
    void aGoalIsTheTraineesOwnAndStaysFreeOfPatients() throws Exception {
        send("/cases/plan", here.trainee(), typed -> typed.set("plannedOn", "2026-11-04"));
        String address = "/cases/" + only().id();
        answer(post(address + "/goal").param("goal", "Even flap thickness"), here.trainee());
        assertThat(page(address, here.supervisor()))
                .contains("Wants to work on: Even flap thickness")
                .doesNotContain(address + "/goal");
        assertThat(page(address + "/goal", here.trainee())).contains("Even flap thickness</textarea>");
        assertThat(answer(post(address + "/goal").param("goal", "mine"), here.supervisor())
                        .getStatus())
                .isEqualTo(404);
        assertThat(text(answer(post(address + "/goal").param("goal", "hospital no 123456"), here.trainee())))
                .contains("This text holds a hospital or patient number.");
    }

    @ParameterizedTest
    @CsvSource({
        "site, nonsense, Choose the site.",
        "supervisor, nonsense, Choose the supervisor.",
        "supervisor, 00000000-0000-4000-8000-000000000000, Choose a supervisor of this programme.",
        "site, 00000000-0000-4000-8000-000000000000, Choose the site.",
        "procedure, APPENDIX, Choose a procedure from the list.",
        "factors, TALL, Choose complexity factors from the list.",
        "reference, K7204, A reference is a letter",
        "endedAt, 2026-11-03T18:51, This end is still to come.",
        "endedAt, soon, Enter day and time of the end",
        "endedAt, 2026-03-29T01:30, 01:30 did not exist that day: the clocks went forward from 01:00 to 02:00.",
        "endedAt, 2026-10-25T01:30, 01:30 came twice that day",
        "endedAt, -999999999-01-01T00:00, This end is more than five years ago."
    })
    void aWrongAnswerIsRefusedInWordsAndStoresNothing(String field, String value, String sentence) throws Exception {
        MockHttpServletResponse answer = send("/cases/new", here.trainee(), typed -> typed.set(field, value));

        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(text(answer)).contains(sentence);
        assertThat(list()).isEmpty();
    }

    @Test
    void anEndWithinTenMinutesAheadIsAccepted() throws Exception {
        send("/cases/new", here.trainee(), typed -> typed.set("endedAt", "2026-11-03T18:50"));

        assertThat(list()).hasSize(1);
    }

    @Test
    void aTimeThatCameTwiceIsAskedAboutAndThenTaken() throws Exception {
        MockHttpServletResponse asked =
                send("/cases/new", here.trainee(), typed -> typed.set("endedAt", "2026-10-25T01:30"));
        assertThat(text(asked)).contains("01:30 BST (GMT+1)", "01:30 GMT (GMT)", "name=\"endedOffset\"");

        send("/cases/new", here.trainee(), typed -> {
            typed.set("endedAt", "2026-10-25T01:30");
            typed.set("endedOffset", "+01:00");
        });

        assertThat(only().endedAt()).isEqualTo(Instant.parse("2026-10-25T00:30:00Z"));
        assertThat(page("/my-cases", here.trainee())).contains("25 Oct 2026, 01:30 BST");
    }

    @Test
    void aTakenReferenceLeadsToTheCaseOnlyForThoseWhoMaySeeIt() throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);

        MockHttpServletResponse own = send("/cases/new", here.trainee(), typed -> typed.set("reference", "k7-204"));
        MockHttpServletResponse theirs = send("/cases/new", peer, typed -> {});

        assertThat(own.getStatus()).isEqualTo(422);
        assertThat(text(own)).contains("belongs to another case", "href=\"/cases/" + only().id() + "\"");
        assertThat(theirs.getStatus()).isEqualTo(422);
        assertThat(text(theirs))
                .contains("belongs to another case")
                .doesNotContain(only().id().toString());
        assertThat(list()).hasSize(1);
    }

    @Test
    void theBandIsWorkedOutWithoutLoggingAnything() throws Exception {
        MockHttpServletResponse answer = send("/cases/new", here.trainee(), typed -> {
            typed.add("factors", "SCARRED");
            typed.add("factors", "YOUNG");
            typed.set("action", "band");
        });

        assertThat(answer.getStatus()).isEqualTo(200);
        assertThat(text(answer))
                .contains("Complexity band C. The first 10 cases of a procedure are meant for the bands A and B")
                .doesNotContain("Please look at these again");
        assertThat(list()).isEmpty();
    }

    @Test
    void aHardCaseAmongTheFirstIsLoggedWithAQuietNote() throws Exception {
        MockHttpServletResponse hard =
                send("/cases/new", here.trainee(), typed -> typed.set("factors", "FAILED_FILTER"));
        MockHttpServletResponse easy = send("/cases/new", here.trainee(), typed -> typed.set("reference", "K7-205"));

        assertThat(list()).hasSize(2);
        assertThat(flash(hard)).contains("Case K7-204 is logged", "band C", "Nothing is refused.");
        assertThat(flash(easy)).contains("Case K7-205 is logged", "band A").doesNotContain("Nothing is refused.");
    }

    @Test
    void aSupervisorLogsForATraineeAndIsNamedToScore() throws Exception {
        assertThat(page("/cases/new", here.supervisor()))
                .contains("Fenna Hallinor", "You are named as the supervisor")
                .containsPattern("href=\"/cases/new\"[^>]*aria-current=\"page\"");

        send("/cases/new", here.supervisor(), typed -> {
            typed.remove("supervisor");
            typed.set("trainee", here.trainee().personId().toString());
        });

        assertThat(page("/cases/" + only().id(), here.supervisor())).contains("Score it");
    }

    @Test
    void whoTrainsAndSupervisesNowhereHasNoForm() throws Exception {
        assertThat(answer(get("/cases/new"), here.director()).getStatus()).isEqualTo(404);
        assertThat(answer(get("/cases/new").param("programme", UUID.randomUUID().toString()), here.trainee())
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void aPlannedCaseIsSetInTimeAndEndsOnItsPage() throws Exception {
        send("/cases/plan", here.trainee(), typed -> {
            typed.remove("endedAt");
            typed.set("plannedOn", "2026-11-03");
            typed.set("factors", "MYOPIA");
        });
        String address = "/cases/" + only().id();
        assertThat(page(address, here.supervisor()))
                .contains("planned for Tue 3 Nov 2026", "once it has ended", "/end\"");

        MultiValueMap<String, String> end = new LinkedMultiValueMap<>();
        end.add("endedAt", "2026-11-03T18:45");
        MockHttpServletResponse sent = answer(post(address + "/end").params(end), here.trainee());

        assertThat(sent.getRedirectedUrl()).isEqualTo(address);
        assertThat(page(address, here.trainee()))
                .contains("3 Nov 2026, 18:45 GMT", "Set before the case.", "High myopia")
                .doesNotContain("planned, has not ended");
    }

    @Test
    void theOtherEyeIsFilledInAndLinked() throws Exception {
        send("/cases/new", here.trainee(), typed -> typed.set("factors", "SCARRED"));
        SurgicalCase right = only();

        String form = page("/cases/new?secondEyeOf=" + right.id(), here.trainee());
        assertThat(form)
                .contains("Filled in from case K7-204", "value=\"" + right.id() + "\"")
                .containsPattern("value=\"LEFT\"\\s+checked=\"checked\"")
                .containsPattern("value=\"SCARRED\"\\s+checked=\"checked\"");

        send("/cases/new", here.trainee(), typed -> {
            typed.set("reference", "K7-205");
            typed.set("eye", Eye.LEFT.name());
            typed.set("secondEyeOf", right.id().toString());
        });

        assertThat(list()).extracting(line -> line.surgicalCase().secondEyeOf()).contains(right.id());
        assertThat(answer(get("/cases/new?secondEyeOf=" + UUID.randomUUID()), here.trainee())
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void aStrangersCaseIsTheSame404AsAnUnknownOne() throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);
        TestProgramme elsewhere = TestProgramme.open(organisations.open(), rubrics);

        for (String rest : List.of("", "/self-score", "/abandon", "/hand-on", "/scorers")) {
            MockHttpServletResponse theirs = answer(get("/cases/" + only().id() + rest), peer);
            MockHttpServletResponse unknown = answer(get("/cases/" + UUID.randomUUID() + rest), peer);
            assertThat(theirs.getStatus()).isEqualTo(404);
            assertThat(unknown.getStatus()).isEqualTo(404);
            assertThat(anonymous(theirs)).isEqualTo(anonymous(unknown));
            assertThat(answer(get("/cases/" + only().id() + rest), elsewhere.director())
                            .getStatus())
                    .isEqualTo(404);
        }
        assertThat(answer(get("/cases/" + only().id()), here.director()).getStatus())
                .isEqualTo(200);
    }

    @ParameterizedTest
    @CsvSource({
        "abandon, abandonedReason, '', Say why",
        "convert, convertedTo, '', Choose another procedure",
        "scorers, supervisor, '', Choose the supervisor.",
        "trainees, trainee, '', Choose the trainee.",
        "hand-on, sheet, '', Choose the score sheet.",
        "end, endedAt, 2026-11-03T18:00, This case is not planned any more."
    })
    void aSmallFormIsRefusedInWords(String change, String field, String value, String sentence) throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        String address = "/cases/" + only().id() + "/" + change;
        assertThat(page(address, here.trainee())).contains("name=\"" + field + "\"");

        MultiValueMap<String, String> typed = new LinkedMultiValueMap<>();
        typed.add(
                "trainee",
                field.equals("trainee") ? "" : here.trainee().personId().toString());
        typed.set(field, value);
        MockHttpServletResponse answer = answer(post(address).params(typed), here.trainee());

        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(text(answer)).contains(sentence, "href=\"#" + field + "\"");
    }

    @Test
    void aSmallFormDoesWhatItSays() throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        String address = "/cases/" + only().id();
        SignedIn second = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);

        answer(
                post(address + "/hand-on")
                        .param("sheet", sheetOf(only()).toString())
                        .param("supervisor", second.personId().toString())
                        .param("reason", "asked the wrong person"),
                here.trainee());
        answer(post(address + "/convert").param("convertedTo", Procedures.DRAINAGE_DEVICE), here.trainee());
        answer(post(address + "/abandon").param("abandonedReason", "power cut"), here.trainee());

        assertThat(page(address, here.trainee()))
                .contains("Dr Hesper Vantrelle is asked to score", "The operation was abandoned: power cut")
                .contains("converted to ");
    }

    @Test
    void ownLevelsAreKeptAndShownAgain() throws Exception {
        send("/cases/new", here.trainee(), typed -> {});
        String address = "/cases/" + only().id() + "/self-score";
        assertThat(page(address, here.trainee()))
                .contains("name=\"level.TF19\"")
                .doesNotContain("checked=\"checked\"");

        MockHttpServletResponse sent =
                answer(post(address).param("level.TF01", "3").param("level.TF02", ""), here.trainee());

        assertThat(flash(sent)).isEqualTo("One step with your level is kept.");
        assertThat(page(address, here.trainee()))
                .containsOnlyOnce("checked=\"checked\"")
                .containsPattern("name=\"level.TF01\" value=\"3\"[^>]*checked=\"checked\"");
        assertThat(answer(post(address).param("level.TF01", "9"), here.trainee())
                        .getStatus())
                .isEqualTo(422);
        assertThat(answer(get(address), here.supervisor()).getStatus()).isEqualTo(404);
    }

    private MockHttpServletResponse send(String address, SignedIn who, Consumer<MultiValueMap<String, String>> change)
            throws Exception {
        MultiValueMap<String, String> typed = new LinkedMultiValueMap<>();
        typed.add("programme", here.programme().toString());
        typed.add("reference", "K7-204");
        typed.add("procedure", Procedures.TRAB_FORNIX);
        typed.add("eye", "RIGHT");
        typed.add("site", here.organisation().site().id().toString());
        typed.add("endedAt", "2026-11-03T17:10");
        typed.add("supervisor", here.supervisor().personId().toString());
        typed.add("plannedSupervision", "SCRUBBED");
        typed.add("claimedPart", "WHOLE_CASE");
        change.accept(typed);
        return answer(post(address).params(typed), who);
    }

    private MockHttpServletResponse answer(
            org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder request, SignedIn who) {
        return clock.at(NOW, () -> {
            try {
                var result =
                        mvc.perform(request.with(LogIn.as(who)).with(csrf())).andReturn();
                Object flash = result.getFlashMap().get("flash");
                result.getResponse().addHeader("X-Flash", flash == null ? "none" : flash.toString());
                return result.getResponse();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private static String flash(MockHttpServletResponse response) {
        return String.valueOf(response.getHeader("X-Flash"));
    }

    private String page(String address, SignedIn who) throws Exception {
        MockHttpServletResponse response = answer(get(address), who);
        assertThat(response.getStatus()).as(address).isEqualTo(200);
        return text(response);
    }

    private static String text(MockHttpServletResponse response) throws Exception {
        String body = response.getContentAsString();
        assertThat(body).doesNotContain("??");
        return HtmlUtils.htmlUnescape(body);
    }

    /** The page without what is random in every answer. */
    private static String anonymous(MockHttpServletResponse response) throws Exception {
        return response.getContentAsString()
                .replaceAll("nonce=\"[^\"]*\"", "")
                .replaceAll("name=\"_csrf\" value=\"[^\"]*\"", "")
                .replaceAll("name=\"csrf-token\" content=\"[^\"]*\"", "");
    }

    private List<TraineeCase> list() {
        return in(() -> cases.ofTrainee(here.trainee().personId()));
    }

    private SurgicalCase only() {
        return list().get(0).surgicalCase();
    }

    private UUID sheetOf(SurgicalCase logged) {
        return in(() -> cases.open(here.trainee(), logged.id()))
                .requests()
                .get(0)
                .sheetId();
    }

    private <T> T in(Supplier<T> work) {
        return clock.at(NOW, () -> here.organisation().in(work));
    }
}
