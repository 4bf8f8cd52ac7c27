package org.scrubline.ledger.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.BufferedReader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.ServiceLoader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.ledger.check.EvidenceFile;
import org.scrubline.ledger.check.EvidenceFixture;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.ledger.check.Known;
import org.scrubline.people.People;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.platform.jobs.QueuedJob;
import org.scrubline.platform.jobs.RecurringJob;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class EvidencePageTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    MockMvc mvc;

    @Autowired
    JobsNow jobs;

    @Autowired
    Checkpoints checkpoints;

    @Autowired
    People people;

    @Autowired
    @Qualifier("storedEvidenceChecks")
    QueuedJob check;

    @Autowired
    @Qualifier("nightlyCheckpoint")
    RecurringJob nightly;

    Evidence evidence;
    SignedIn director;

    @BeforeEach
    void open() {
        evidence = fixture.withoutCheckpoint(organisations);
        director = evidence.theatre().organisation().join("Ruda Calloway", Role.DIRECTOR);
    }

    @Test
    void theDirectorReadsHowFarTheLedgerIs() throws Exception {
        assertThat(page())
                .contains("None yet. One is signed each night", "Nobody has asked for a check yet")
                .contains("scrubline/ledger/" + evidence.tenant() + "+")
                .doesNotContain("/evidence/checkpoint.txt");
    }

    @Test
    void aCheckpointIsSignedOnDemandAndTakenAlong() throws Exception {
        mvc.perform(get("/evidence/checkpoint.txt").with(LogIn.as(director))).andExpect(status().isNotFound());
        mvc.perform(post("/evidence/checkpoint").with(LogIn.as(director)).with(csrf()))
                .andExpect(redirectedUrl("/evidence"));
        assertThat(page()).contains("Newest checkpoint", "covers ");
        String note = text("/evidence/checkpoint.txt");
        String key = text("/evidence/key.txt");
        assertThat(Known.read(List.of(key), List.of(note)).checkpoints()).hasSize(1);
        mvc.perform(post("/evidence/checkpoint").with(LogIn.as(director)).with(csrf()))
                .andExpect(redirectedUrl("/evidence"));
        assertThat(text("/evidence/checkpoint.txt")).as("nothing new to cover").isEqualTo(note);
    }

    @Test
    void aCheckIsAskedForMadeByAJobAndReadInPlainWords() throws Exception {
        for (int twice = 0; twice < 2; twice++) {
            mvc.perform(post("/evidence/check").with(LogIn.as(director)).with(csrf()))
                    .andExpect(redirectedUrl("/evidence"));
        }
        assertThat(page()).contains("Waiting to start.", "Look again");
        assertThat(jobs.waiting(evidence.tenant(), check)).hasSize(1);
        jobs.runWaiting(evidence.tenant(), check);
        assertThat(page()).contains("Finished ", "Sound: nothing was changed").doesNotContain("Look again");
    }

    @Test
    void theEvidenceFileIsWholeAndSound() throws Exception {
        CheckResult result = EvidenceFile.check(
                new BufferedReader(new StringReader(text("/evidence/evidence.jsonl"))),
                Known.NOTHING,
                ServiceLoader.load(RecordCheck.class));
        assertThat(result.sound()).isTrue();
        assertThat(result.records()).isEqualTo(1);
    }

    @Test
    void theNightlyJobSignsOnceUntilTheLedgerGrows() {
        jobs.run(nightly);
        long size = newestSize();
        jobs.run(nightly);
        assertThat(newestSize()).isEqualTo(size);
    }

    private long newestSize() {
        return evidence.theatre()
                .organisation()
                .in(() -> checkpoints.newest().orElseThrow().size());
    }

    @Test
    void whoDoesNotDirectEveryProgrammeTakesNoFileWithAllOfThem() throws Exception {
        evidence.theatre()
                .organisation()
                .in(() -> people.addProgramme("Another programme", "Europe/London")
                        .orThrow());
        mvc.perform(get("/evidence/evidence.jsonl").with(LogIn.as(director))).andExpect(status().isNotFound());
        assertThat(page()).contains("for whoever directs all of them").doesNotContain("evidence.jsonl");
    }

    @Test
    void forEveryoneElseThePageDoesNotExist() throws Exception {
        for (SignedIn other : List.of(
                evidence.theatre().supervisor(),
                evidence.theatre().trainee(),
                evidence.theatre().organisation().join("Ilse Marrow", Role.ADMINISTRATOR))) {
            for (String path : List.of("", "/checkpoint.txt", "/key.txt", "/evidence.jsonl")) {
                mvc.perform(get("/evidence" + path).with(LogIn.as(other))).andExpect(status().isNotFound());
            }
            for (String path : List.of("/checkpoint", "/check")) {
                mvc.perform(post("/evidence" + path).with(LogIn.as(other)).with(csrf()))
                        .andExpect(status().isNotFound());
            }
        }
    }

    private String page() throws Exception {
        return text("/evidence");
    }

    private String text(String path) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(director)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString(StandardCharsets.UTF_8);
    }
}
