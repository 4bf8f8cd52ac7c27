package org.scrubline.committee.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.CommitteeFixture;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.committee.Decision;
import org.scrubline.committee.Meeting;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class CommitteePagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    History history;

    @Autowired
    CommitteeFixture fixture;

    Board board;
    Meeting meeting;
    String evidence;

    @BeforeEach
    void openAMeeting() {
        board = fixture.board(organisations, history, 5);
        meeting = fixture.open(board);
        evidence = "/meetings/" + meeting.id() + "/trainees/" + board.trainee().personId();
    }

    private void reads(SignedIn who, String path, int status) throws Exception {
        mvc.perform(get(path).with(LogIn.as(who))).andExpect(status().is(status));
    }

    @Test
    void whoBelongsReadsAndWhoDoesNotIsToldThereIsNothing() throws Exception {
        for (SignedIn who : List.of(board.director(), board.chair())) {
            reads(who, "/meetings", 200);
            reads(who, "/meetings/" + meeting.id(), 200);
            reads(who, evidence, 200);
        }
        reads(board.administrator(), "/meetings/" + meeting.id(), 200);
        reads(board.administrator(), evidence, 404);
        reads(board.administrator(), evidence + "/pack.json", 404);
        reads(board.trainee(), evidence, 404);
        reads(board.trainee(), "/meetings", 404);
        reads(board.supervisors().get(0), "/meetings/" + meeting.id(), 404);
        reads(board.chair(), evidence + "/decision", 200);
        reads(board.director(), evidence + "/decision", 404);
        reads(board.chair(), evidence + "/decision/review", 404);
        reads(board.trainee(), "/decisions-due", 404);
    }

    @Test
    void thePackIsMadeAgainOnDemand() throws Exception {
        mvc.perform(get(evidence + "?again=true").with(LogIn.as(board.chair())))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("Rebuilt: same.")));
        mvc.perform(get(evidence).with(LogIn.as(board.chair())))
                .andExpect(content().string(not(containsString("Rebuilt"))))
                .andExpect(content().string(containsString("Insufficient evidence.")));
    }

    @Test
    void aMeetingIsPlannedOnAPageAndAnEmptyFormIsRefusedInWords() throws Exception {
        String programme = board.organisation().programme().id().toString();
        mvc.perform(post("/meetings/new")
                        .with(LogIn.as(board.administrator()))
                        .with(csrf())
                        .param("programme", programme)
                        .param("at", "yesterday"))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose at least one trainee.")))
                .andExpect(content().string(containsString("Enter a day and time")));
        mvc.perform(post("/meetings/new")
                        .with(LogIn.as(board.director()))
                        .with(csrf())
                        .param("programme", programme)
                        .param("at", LocalDateTime.now().plusDays(2).toString())
                        .param(
                                "members",
                                board.invited().stream().map(Object::toString).toArray(String[]::new))
                        .param("chair", board.chair().personId().toString())
                        .param("trainees", board.trainee().personId().toString()))
                .andExpect(redirectedUrlPattern("/meetings/*"));
        mvc.perform(get("/meetings/new").param("programme", programme).with(LogIn.as(board.chair())))
                .andExpect(status().isNotFound());
    }

    @Test
    void theChairWritesReadsAndSigns() throws Exception {
        mvc.perform(post(evidence + "/decision").with(LogIn.as(board.chair())).with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose the procedures.")));
        var form = post(evidence + "/decision")
                .with(LogIn.as(board.chair()))
                .with(csrf())
                .param("family", "TRABECULECTOMY")
                .param("bands", "A", "B")
                .param("level", "INSUFFICIENT")
                .param("reviewOn", LocalDate.now().plusMonths(6).toString())
                .param("reasons", "Five cases are too few to conclude from.");
        board.invited().forEach(member -> form.param("vote-" + member, "FOR"));
        mvc.perform(form).andExpect(redirectedUrl(evidence + "/decision/review"));
        String page = mvc.perform(get(evidence + "/decision/review").with(LogIn.as(board.chair())))
                .andExpect(status().isOk())
                .andExpect(content().string(containsString("I decide, for the committee.")))
                .andReturn()
                .getResponse()
                .getContentAsString();
        String hash = page.replaceAll("(?s).*name=\"hash\" value=\"([0-9a-f]{64})\".*", "$1");
        mvc.perform(post(evidence + "/decision/sign")
                        .with(LogIn.as(board.chair()))
                        .with(csrf())
                        .param("hash", hash)
                        .param("password", "wrong"))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(post(evidence + "/decision/sign")
                        .with(LogIn.as(board.chair()))
                        .with(csrf())
                        .param("hash", hash)
                        .param("password", TestOrganisations.PASSWORD))
                .andExpect(redirectedUrlPattern("/decisions/*"));
    }

    @Test
    void theTraineeReadsDecisionLetterAndEvidenceAndAppeals() throws Exception {
        reads(board.trainee(), "/decisions", 200);
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        String path = "/decisions/" + decision.id();
        for (String page : List.of("/decisions", path, path + "/letter", evidence)) {
            reads(board.trainee(), page, 200);
        }
        mvc.perform(get(path + "/letter").with(LogIn.as(board.trainee())))
                .andExpect(content().string(not(containsString("Five cases"))))
                .andExpect(content().string(containsString(CommitteeFixture.REASONS)));
        reads(board.supervisors().get(0), path, 404);
        reads(board.administrator(), path + "/letter", 404);
        mvc.perform(post(path + "/appeal")
                        .with(LogIn.as(board.trainee()))
                        .with(csrf())
                        .param("reason", "no")
                        .param("password", TestOrganisations.PASSWORD))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("at least 10 characters")));
        mvc.perform(post(path + "/appeal")
                        .with(LogIn.as(board.trainee()))
                        .with(csrf())
                        .param("reason", "I have done more than this says.")
                        .param("password", TestOrganisations.PASSWORD))
                .andExpect(redirectedUrl(path));
        mvc.perform(get("/decisions-due").with(LogIn.as(board.director())))
                .andExpect(content().string(containsString("Fenna Hallinor: appeal")))
                .andExpect(content().string(containsString("Letters to give")));
        mvc.perform(get("/decisions-due").with(LogIn.as(board.administrator())))
                .andExpect(content().string(not(containsString("Fenna Hallinor: appeal"))));
        mvc.perform(post(path + "/letter-given")
                        .with(LogIn.as(board.administrator()))
                        .with(csrf()))
                .andExpect(redirectedUrl("/decisions-due"));
        mvc.perform(get("/progress").with(LogIn.as(board.trainee())))
                .andExpect(content().string(containsString("E1, parts of the case, supervisor scrubbed")));
        mvc.perform(get("/seen").with(LogIn.as(board.trainee()))).andExpect(status().isOk());
    }

    @Test
    void packAndLetterAreTaggedFilesWithTheirReceipt() throws Exception {
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        Path out = Files.createDirectories(Path.of("target", "committee"));
        for (String path : List.of(evidence + "/pack.pdf", "/decisions/" + decision.id() + "/letter.pdf")) {
            byte[] pdf = mvc.perform(get(path).with(LogIn.as(board.trainee())))
                    .andExpect(status().isOk())
                    .andReturn()
                    .getResponse()
                    .getContentAsByteArray();
            String text = new String(pdf, StandardCharsets.ISO_8859_1);
            assertThat(text).startsWith("%PDF-").contains("/StructTreeRoot");
            Files.write(out.resolve(path.substring(path.lastIndexOf('/') + 1)), pdf);
        }
    }
}
