package org.scrubline.rubric.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.TestProgramme;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.change.RubricDraft;
import org.scrubline.rubric.change.RubricDrafts;
import org.scrubline.rubric.survey.ExpertRound;
import org.scrubline.rubric.survey.ExpertRounds;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMvcRequestBuilders;

@ScrublineTest
class RubricChangePagesTests {

    private static final String DRAFT = "/rubrics/changes/" + Procedures.NEEDLING;
    private static final String ROUNDS = "/rubrics/rounds";

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    RubricDrafts drafts;

    @Autowired
    ExpertRounds rounds;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    TestProgramme programme;
    SignedIn director;
    SignedIn supervisor;

    @BeforeEach
    void open() {
        programme = TestProgramme.open(organisations.open(), rubrics);
        director = programme.director();
        supervisor = programme.supervisor();
    }

    @Test
    void aVersionGoesFromDraftToItsFirstDayOnThePages() throws Exception {
        assertThat(page(DRAFT, director)).contains("No draft is open", "Begin a draft", "Retire this procedure");
        assertThat(page(DRAFT, supervisor)).contains("No draft is open").doesNotContain("Begin a draft");
        assertThat(send(DRAFT, director, Map.of()).getRedirectedUrl()).isEqualTo(DRAFT);
        assertThat(page(DRAFT, director)).contains("1.0 is published already").doesNotContain("See what changes");

        RubricDraft begun = draft();
        String text = begun.source()
                .replace("version: \"1.0\"", "version: \"1.1\"")
                .replaceFirst("name: .*", "name: Something else altogether");
        save(begun.lockNo(), text, 302);
        assertThat(page(DRAFT, director)).contains("See what changes").doesNotContain("is published already");
        assertThat(page(DRAFT + "/compare", director))
                .contains("From version 1.0 to 1.1", "Still the same step?", "It stays the same step.")
                .contains("Nobody has reviewed this draft", "once a second person has agreed")
                .doesNotContain("Your review");
        assertThat(page(DRAFT + "/compare", supervisor)).contains("Your review").doesNotContain("Publish");

        String hash = draft().hash();
        assertThat(send(DRAFT + "/review", supervisor, Map.of("hash", hash, "answer", "agree", "words", ""))
                        .getStatus())
                .isEqualTo(422);
        assertThat(send(DRAFT + "/review", supervisor, Map.of("hash", hash, "answer", "agree", "words", "Clear to me."))
                        .getStatus())
                .isEqualTo(302);
        assertThat(page(DRAFT + "/compare", director)).contains("Clear to me.", "Publish this version");
        String today =
                LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/London")).toString();
        Map<String, String> publish = Map.of("hash", hash, "day", today, "reason", "Clearer words.");
        assertThat(send(DRAFT + "/publish", supervisor, publish).getStatus()).isEqualTo(404);
        assertThat(send(DRAFT + "/publish", director, publish).getRedirectedUrl())
                .isEqualTo(DRAFT);
        assertThat(page(DRAFT, director)).contains("Version 1.1 is for new cases since", "Clearer words.");
    }

    @Test
    void aTextThatCannotBeKeptStaysInTheFormAndALaterSaveShowsBoth() throws Exception {
        send(DRAFT, director, Map.of());

        save(1, "a\0b", 400);
        assertThat(save(1, "x".repeat(65_537), 422)).contains("65,537 bytes", "xxx");
        save(1, "procedure: [", 302);
        assertThat(page(DRAFT, director)).contains("cannot be read");
        assertThat(page(DRAFT + "/compare", supervisor)).contains("Nothing can be compared yet.");
        assertThat(save(1, "mine", 409)).contains("mine", "procedure: [");
        assertThat(send(DRAFT + "/save", director, Map.of("lock", "x")).getStatus())
                .isEqualTo(400);
        send(DRAFT + "/drop", director, Map.of("lock", "2"));
        assertThat(page(DRAFT, director)).contains("No draft is open");
    }

    @Test
    void aDirectorRetiresAProcedureWithAReason() throws Exception {
        String today =
                LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/London")).toString();

        assertThat(send(DRAFT + "/retire", director, Map.of("day", today)).getStatus())
                .isEqualTo(422);
        assertThat(send(DRAFT + "/retire", supervisor, Map.of("day", today, "reason", "Mine."))
                        .getStatus())
                .isEqualTo(404);
        send(DRAFT + "/retire", director, Map.of("day", today, "reason", "No longer done here."));

        assertThat(page(DRAFT, director))
                .contains("takes no new cases", "No longer done here.")
                .doesNotContain("Retire this procedure");
    }

    @Test
    void expertsAnswerOnceAndApartAndTheResultComesAfterTheLastDay() throws Exception {
        assertThat(page(ROUNDS, director)).contains("No round to show");
        assertThat(send(ROUNDS, director, Map.of()).getStatus()).isEqualTo(422);
        List<SignedIn> experts = List.of(
                supervisor,
                programme.another("Lorenz Quellan", Role.COMMITTEE_MEMBER),
                programme.another("Kavi Balcairn", Role.SUPERVISOR));
        ExpertRound round = round(experts);
        String path = ROUNDS + "/" + round.id();

        assertThat(page(path, director))
                .contains("0 of 3 experts have answered")
                .doesNotContain("Send my answer");
        assertThat(send(path, supervisor, Map.of()).getStatus()).isEqualTo(422);
        assertThat(send(path, director, answers(round, 4)).getStatus()).isEqualTo(404);
        for (int i = 0; i < experts.size(); i++) {
            assertThat(page(path, experts.get(i))).contains("Send my answer");
            assertThat(send(path, experts.get(i), answers(round, i + 2)).getStatus())
                    .isEqualTo(302);
        }
        assertThat(send(path, supervisor, answers(round, 1)).getStatus()).isEqualTo(422);
        assertThat(page(path, supervisor))
                .contains("3 of 3 experts have answered", "when the last day is over")
                .doesNotContain("Send my answer", "0.67", "Needed 2");
        SignedIn stranger = programme.another("Ada Verney", Role.SUPERVISOR);
        assertThat(get(path, stranger).getStatus()).isEqualTo(404);

        String closed = clock.at(clock.instant().plus(Duration.ofDays(9)), () -> pageUnchecked(path));
        assertThat(closed)
                .contains("2 of 3", "0.67", "talking about it", "Mean share over all steps 0.67, from 3 experts")
                .contains("Needed 2", "Needed 3", "Needed 4", "People decide")
                .doesNotContain("Balcairn");
        assertThat(programme.organisation().in(() -> ledger.find(LeafKind.RUBRIC_ROUND, round.id())))
                .isPresent();
    }

    @Test
    void fewerThanThreeAnswersShowNoResult() throws Exception {
        ExpertRound round = round(List.of(
                supervisor,
                programme.another("Lorenz Quellan", Role.COMMITTEE_MEMBER),
                programme.another("Kavi Balcairn", Role.SUPERVISOR)));
        String path = ROUNDS + "/" + round.id();
        send(path, supervisor, answers(round, 4));

        String closed = clock.at(clock.instant().plus(Duration.ofDays(9)), () -> pageUnchecked(path));

        assertThat(closed)
                .contains("1 answered, and fewer than 3 experts say too little")
                .doesNotContain("Needed 4", "1.00");
    }

    @Test
    void aDirectorAsksPeopleOfTheirOwnProgrammeAlone() throws Exception {
        SignedIn elsewhere = programme.organisation().anotherProgramme().join("Rhona Elsewhere", Role.DIRECTOR);
        assertThat(page(ROUNDS, director)).contains(supervisor.printedName());
        assertThat(page(ROUNDS, elsewhere)).contains("Ask experts").doesNotContain(supervisor.printedName());

        Attempt<ExpertRound> asked = programme
                .organisation()
                .in(() -> rounds.open(
                        elsewhere,
                        rubrics.current(Procedures.NEEDLING).rubric(),
                        LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/London"))
                                .toString(),
                        Set.of(supervisor.personId(), director.personId(), elsewhere.personId())));
        List<Refusal> reasons = asked.fold(round -> List.of(), refused -> refused);
        assertThat(reasons).extracting(Refusal::field).containsExactly("experts");
    }

    private ExpertRound round(List<SignedIn> experts) {
        String day = LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/London"))
                .plusDays(7)
                .toString();
        return programme
                .organisation()
                .in(() -> rounds.open(
                        director,
                        rubrics.current(Procedures.NEEDLING).rubric(),
                        day,
                        experts.stream().map(SignedIn::personId).collect(Collectors.toSet())))
                .orThrow();
    }

    private static Map<String, String> answers(ExpertRound round, int relevance) {
        Map<String, String> typed = new TreeMap<>();
        for (Step step : round.rubric().steps()) {
            typed.put(ExpertRounds.RELEVANCE + step.code(), Integer.toString(relevance));
        }
        typed.put(ExpertRounds.REMARK + round.rubric().steps().get(0).code(), "Needed " + relevance);
        return typed;
    }

    private RubricDraft draft() {
        return programme
                .organisation()
                .in(() -> drafts.open(director, Procedures.NEEDLING))
                .orElseThrow();
    }

    private String save(int lock, String source, int status) throws Exception {
        MockHttpServletResponse response =
                send(DRAFT + "/save", director, Map.of("lock", Integer.toString(lock), "source", source));
        assertThat(response.getStatus()).isEqualTo(status);
        return response.getContentAsString();
    }

    private String pageUnchecked(String path) {
        try {
            return page(path, director);
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private String page(String path, SignedIn who) throws Exception {
        MockHttpServletResponse response = get(path, who);
        assertThat(response.getStatus()).as(path).isEqualTo(200);
        assertThat(response.getContentAsString()).doesNotContain("??");
        return response.getContentAsString();
    }

    private MockHttpServletResponse get(String path, SignedIn who) throws Exception {
        return answer(MockMvcRequestBuilders.get(path), who);
    }

    private MockHttpServletResponse send(String path, SignedIn who, Map<String, String> fields) throws Exception {
        MockHttpServletRequestBuilder request = post(path).with(csrf());
        fields.forEach(request::param);
        return answer(request, who);
    }

    private MockHttpServletResponse answer(MockHttpServletRequestBuilder request, SignedIn who) throws Exception {
        return mvc.perform(request.with(LogIn.as(who))).andReturn().getResponse();
    }
}
