package org.scrubline.access;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.CommitteeFixture;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.committee.Decision;
import org.scrubline.committee.DecisionDraft;
import org.scrubline.committee.Meeting;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** Hostile text in names and in what a committee writes, on the papers a committee hands out. */
@ScrublineTest
class HostilePaperTests {

    private static final String TRAINEE = "Fenna <img src=x onerror=window.canary=true> Hallinor";
    private static final String SCORER = "Ottilie </title><script>window.canary=true</script> Brannock";
    private static final String CHAIR = "Thaddeus \" data-canary='1 ]]><x-canary> Quillmere";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    CommitteeFixture fixture;

    @Autowired
    History history;

    @Autowired
    ScrublineClock clock;

    Board board;
    Meeting meeting;

    @BeforeEach
    void openAMeeting() {
        Board quiet = fixture.board(organisations, history, 0);
        TestOrganisation organisation = quiet.organisation();
        List<SignedIn> members = new ArrayList<>(quiet.members());
        members.set(0, organisation.join(CHAIR, Role.COMMITTEE_MEMBER));
        SignedIn trainee = organisation.join(TRAINEE, Role.TRAINEE);
        SignedIn scorer = organisation.join(SCORER, Role.SUPERVISOR);
        SignedSheet record =
                history.signed(organisation, trainee, scorer, clock.instant().minus(Duration.ofDays(9)), Map.of());
        board = new Board(
                organisation,
                quiet.director(),
                members.get(0),
                members,
                quiet.administrator(),
                trainee,
                List.of(scorer),
                List.of(record));
        meeting = fixture.open(board);
    }

    @Test
    void theEvidenceAndTheLetterShowItAsText() throws Exception {
        Decision decision = decided(String.join("\n", HostileText.payloads()));
        String evidence =
                "/meetings/" + meeting.id() + "/trainees/" + board.trainee().personId();
        HostilePaper.shows(read(evidence + "/pack.pdf"), List.of(TRAINEE, SCORER));

        List<String> written = new ArrayList<>(HostileText.payloads());
        written.add(TRAINEE);
        written.add(CHAIR);
        HostilePaper.shows(read("/decisions/" + decision.id() + "/letter.pdf"), written);
    }

    /** What is looked for is found where it is there. */
    @Test
    void aFileThatRunsSomethingWouldBeNoticed() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            document.getDocumentCatalog().setOpenAction(new PDActionJavaScript("app.alert(1)"));
            document.save(out);
        }
        assertThatThrownBy(() -> HostilePaper.shows(out.toByteArray(), List.of()))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("OpenAction");
    }

    private Decision decided(String text) {
        DecisionDraft usual = fixture.draft(board, meeting, EntitlementLevel.E1);
        DecisionDraft hostile = new DecisionDraft(
                usual.family(),
                usual.bands(),
                usual.answered(),
                usual.level(),
                usual.reviewOn(),
                text,
                text,
                text,
                usual.votes());
        return fixture.sign(board, meeting, hostile).orThrow();
    }

    private byte[] read(String path) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(board.trainee())))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
    }
}
