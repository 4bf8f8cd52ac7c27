package org.scrubline.training.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.scrubline.training.TrainingEntry;
import org.scrubline.training.TrainingRecords;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.util.LinkedMultiValueMap;

@ScrublineTest
class TrainingPagesTests {

    private static final Map<String, String> FLAP = Map.of("kind", "WET_LAB", "exercise", "FLAP", "day", "2026-03-12");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    TrainingRecords records;

    @Autowired
    People people;

    @Autowired
    Rubrics rubrics;

    @Autowired
    Ledger ledger;

    TestOrganisation organisation;
    SignedIn trainee;
    SignedIn supervisor;
    SignedIn director;
    String page;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        page = "/training/" + trainee.personId();
    }

    @Test
    void anEmptyRecordSaysWhatIsNotRecordedAndJudgesNobody() throws Exception {
        look(page, trainee)
                .andExpect(status().isOk())
                .andExpect(content()
                        .string(allOf(
                                containsString("Nothing recorded yet"),
                                containsString("Practice of the flap, signed off."),
                                not(containsString("??")))));
        look("/training", trainee).andExpect(redirectedUrl(page));
        look("/training", director).andExpect(content().string(containsString("Fenna Hallinor")));
    }

    @Test
    void practiceATraineeEntersWaitsUntilASupervisorConfirmsIt() throws Exception {
        send(page + "/entries", trainee, FLAP).andExpect(redirectedUrl(page));
        look(page, trainee).andExpect(content().string(containsString("waits for a supervisor")));
        TrainingEntry entry = entries().get(0);
        assertThat(entry.signedOff()).isFalse();

        answer(supervisor, entry, "YES", "").andExpect(redirectedUrl(page));
        look(page, trainee)
                .andExpect(content()
                        .string(allOf(
                                containsString("confirmed by Ansel Verrin"),
                                not(containsString("Practice of the flap, signed off.")))));
        assertThat(entries().get(0).signedOff()).isTrue();
        assertThat(organisation.in(() -> ledger.find(LeafKind.TRAINING_ENTRY, entry.id())))
                .isPresent();
        answer(supervisor, entry, "NO", "Seen by nobody")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("This entry has an answer already.")));
    }

    @Test
    void practiceThatIsNotConfirmedNeedsAReasonAndCountsForNothing() throws Exception {
        send(page + "/entries", trainee, FLAP);
        TrainingEntry entry = entries().get(0);
        answer(supervisor, entry, "NO", "")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Say why you cannot confirm it.")));
        answer(supervisor, entry, "NO", "I was not there.").andExpect(redirectedUrl(page));
        assertThat(entries().get(0).signedOff()).isFalse();
        look(page, trainee)
                .andExpect(content()
                        .string(allOf(
                                containsString("not confirmed by Ansel Verrin"), containsString("I was not there."))));
    }

    @Test
    void practiceASupervisorEntersIsSignedOffAndOneInConflictEntersNone() throws Exception {
        send(page + "/entries", supervisor, FLAP).andExpect(redirectedUrl(page));
        assertThat(entries().get(0).signedOff()).isTrue();
        SignedIn other = organisation.join("Mirembe Astolane", Role.SUPERVISOR);
        organisation.in(() -> {
            people.declareConflict(trainee.personId(), other.personId());
            return true;
        });
        send(page + "/entries", other, FLAP)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("A declared conflict of interest bars this.")));
        send(page + "/entries", trainee, FLAP);
        answer(
                        other,
                        entries().stream()
                                .filter(TrainingEntry::waits)
                                .findFirst()
                                .orElseThrow(),
                        "YES",
                        "")
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void anEntryIsKnownFromTheInstantItWasWrittenOn() throws Exception {
        Instant before = Instant.now();
        send(page + "/entries", trainee, FLAP);
        TrainingEntry entry = entries().get(0);
        answer(supervisor, entry, "YES", "");
        assertThat(known(before)).isEmpty();
        assertThat(known(entry.author().at()))
                .singleElement()
                .satisfies(one -> assertThat(one.signedOff()).isFalse());
        assertThat(entries().get(0).signedOff()).isTrue();
    }

    @Test
    void goalsAreBetweenTheTraineeAndThoseWhoGuideTheTraining() throws Exception {
        String goal = "An even flap without help.";
        send(page + "/entries", trainee, Map.of("kind", "GOAL", "day", "2026-03-12", "said", goal));
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        look(page, director).andExpect(content().string(containsString(goal)));
        look(page, administrator)
                .andExpect(content().string(allOf(containsString("Goal of the year"), not(containsString(goal)))));
        look(page, supervisor)
                .andExpect(
                        content().string(allOf(not(containsString(goal)), not(containsString(">Goal of the year<")))));
    }

    @Test
    void whatIsMissingIsNamedFieldByFieldAndKept() throws Exception {
        send(page + "/entries", trainee, Map.of("kind", "INDUCTION", "day", "2026-03-12", "said", "By nobody"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content()
                        .string(allOf(containsString("Choose what the entry is about."), containsString("By nobody"))));
        send(page + "/entries", trainee, Map.of("kind", "WET_LAB", "day", "2999-01-01"))
                .andExpect(content()
                        .string(allOf(
                                containsString("Choose what was practised."),
                                containsString("Enter a day that is not in the future."))));
        send(page + "/entries", director, Map.of("kind", "INDUCTION", "day", "2026-03-12", "said", " "))
                .andExpect(content().string(containsString("Say it in a few words.")));
        assertThat(entries()).isEmpty();
    }

    @Test
    void aDirectorDeclaresEarlierCasesAndTheTraineeDoesNot() throws Exception {
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        Map<String, String> declared = Map.of("procedure", "TRAB_FORNIX", "cases", "12");
        send(page + "/experience", director, declared).andExpect(redirectedUrl(page));
        assertThat(organisation.in(() -> people.priorExperience(trainee.personId(), "TRAB_FORNIX")))
                .isEqualTo(12);
        send(page + "/experience", trainee, declared).andExpect(status().isNotFound());
        send(page + "/experience", director, Map.of("procedure", "NONE", "cases", "many"))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void strangersFindNoRecord() throws Exception {
        SignedIn other = organisation.join("Brisa Tekmor", Role.TRAINEE);
        SignedIn abroad = organisations.open().join("Somebody Else", Role.DIRECTOR);
        SignedIn visitor = organisation.join("Rhosyn Callavere", Role.VISITOR);
        for (SignedIn who : List.of(other, abroad, visitor)) {
            look(page, who).andExpect(status().isNotFound());
            send(page + "/entries", who, FLAP).andExpect(status().isNotFound());
        }
        look("/training/" + UUID.randomUUID(), director).andExpect(status().isNotFound());
        look("/training/" + supervisor.personId(), director).andExpect(status().isNotFound());
    }

    @Test
    void aPlanIsEnteredByFamilyAndRefusedWithItsMonth() throws Exception {
        String plan = "/exposure-plan/TRABECULECTOMY";
        send(plan, director, Map.of("month1", "1", "month2", "17"))
                .andExpect(redirectedUrl(
                        "/exposure-plan?programme=" + organisation.programme().id()));
        look("/exposure-plan", director).andExpect(content().string(containsString("17")));
        look(plan, director).andExpect(content().string(containsString("value=\"17\"")));
        send(plan, director, Map.of("month3", "a few"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Month 3: enter a whole number from 0 to 99.")));
        look("/exposure-plan/NONE", director).andExpect(status().is4xxClientError());
    }

    private List<TrainingEntry> entries() {
        return known(Instant.now().plusSeconds(60));
    }

    private List<TrainingEntry> known(Instant at) {
        return organisation.in(() -> records.of(organisation.programme().id(), trainee.personId(), at));
    }

    private ResultActions answer(SignedIn who, TrainingEntry entry, String answer, String remark) throws Exception {
        return send(page + "/answers", who, Map.of("entry", entry.id().toString(), "answer", answer, "remark", remark));
    }

    private ResultActions look(String path, SignedIn who) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who)));
    }

    private ResultActions send(String path, SignedIn who, Map<String, String> typed) throws Exception {
        LinkedMultiValueMap<String, String> form = new LinkedMultiValueMap<>();
        typed.forEach(form::add);
        return mockMvc.perform(post(path).params(form).with(LogIn.as(who)).with(csrf()));
    }
}
