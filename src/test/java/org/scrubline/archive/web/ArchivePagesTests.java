package org.scrubline.archive.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Reflections;
import org.scrubline.ledger.check.EvidenceFixture;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** The copy of everything kept about a person: theirs whole, and nobody else's. */
@ScrublineTest
class ArchivePagesTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    SignedRecords records;

    @Autowired
    Reflections reflections;

    @Autowired
    ScrublineClock clock;

    Evidence evidence;
    SignedSheet signed;
    SignedIn trainee;
    SignedIn supervisor;

    @BeforeEach
    void signOneOfEachKind() {
        evidence = fixture.withoutCheckpoint(organisations);
        signed = evidence.signed().get(0);
        trainee = evidence.theatre().trainee();
        supervisor = evidence.theatre().supervisor();
        evidence.theatre()
                .organisation()
                .in(() -> records.remark(trainee, signed.id(), "=1+1 the punch slipped, µ ≥ 2 – noted.")
                        .orThrow());
    }

    @Test
    void theFileHoldsWhatWasSignedAboutItsOwnerAndTheirOwnNotes() throws Exception {
        String procedure = signed.procedureCode();
        String step = signed.steps().get(0).stepCode();
        evidence.theatre()
                .organisation()
                .in(() -> reflections
                        .write(trainee, procedure, step, "Count aloud next time.")
                        .orThrow());

        Map<String, String> files = archive(trainee);

        assertThat(files.get("signed-sheets.csv"))
                .contains(signed.contentHash(), signed.id().toString());
        assertThat(files.get("notes-for-oneself.csv")).contains("Count aloud next time.");
        assertThat(files.get("remarks.csv")).as("no formula").contains("\"'=1+1 the punch slipped, µ ≥ 2 – noted.\"");
        assertThat(files.get("roles.csv")).contains("TRAINEE");
        assertThat(files.get("person.csv")).contains(trainee.username()).doesNotContain("{argon2");
        assertThat(files.get("index.html"))
                .contains(trainee.printedName(), signed.contentHash(), "Count aloud next time.")
                .doesNotContain("tenant_id", "??");
        assertThat(files.keySet()).doesNotContain("visits.csv", "passkeys.csv");
    }

    @Test
    void notesForOneselfAreInNobodyElsesFile() throws Exception {
        String procedure = signed.procedureCode();
        String step = signed.steps().get(0).stepCode();
        evidence.theatre()
                .organisation()
                .in(() -> reflections
                        .write(trainee, procedure, step, "Count aloud next time.")
                        .orThrow());
        SignedIn director = evidence.theatre().organisation().join("Corisande Delmarr", Role.DIRECTOR);
        SignedIn other = evidence.theatre().organisation().join("Bram Tilling", Role.TRAINEE);

        for (SignedIn somebody : new SignedIn[] {supervisor, director, other}) {
            assertThat(String.join("", archive(somebody).values())).doesNotContain("Count aloud next time.");
        }
        assertThat(archive(supervisor).get("signed-sheets.csv")).contains(signed.contentHash());
        assertThat(String.join("", archive(other).values())).doesNotContain(signed.contentHash());
    }

    @Test
    void anotherOrganisationHasNothingOfIt() throws Exception {
        SignedIn elsewhere = organisations.open().join("Aldis Varnholt", Role.TRAINEE);

        assertThat(archive(elsewhere).keySet()).doesNotContain("signed-sheets.csv", "cases.csv");
    }

    @Test
    void takingTheCopyIsWrittenDownAndLookingAtThePageIsNot() throws Exception {
        mvc.perform(get("/my-archive").with(LogIn.as(trainee))).andExpect(status().isOk());
        assertThat(archive(trainee).get("what-was-done.csv")).doesNotContain("archive-taken");

        assertThat(archive(trainee).get("what-was-done.csv")).containsOnlyOnce("archive-taken");
    }

    @Test
    void withoutACredentialShownLatelyNothingIsGiven() throws Exception {
        String answer = clock.at(clock.instant().plus(Duration.ofMinutes(6)), () -> refused(trainee));

        assertThat(answer).contains("/account/keys").doesNotContain(signed.contentHash());
    }

    private String refused(SignedIn who) {
        try {
            return mvc.perform(post("/my-archive.zip").with(csrf()).with(LogIn.as(who)))
                    .andExpect(status().isForbidden())
                    .andReturn()
                    .getResponse()
                    .getContentAsString();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private Map<String, String> archive(SignedIn who) throws Exception {
        byte[] zip = mvc.perform(post("/my-archive.zip").with(csrf()).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        Map<String, String> files = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                files.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return files;
    }
}
