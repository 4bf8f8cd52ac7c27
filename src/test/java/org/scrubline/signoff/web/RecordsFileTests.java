package org.scrubline.signoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.RecordFixture;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.signoff.VersionFixture;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** The table a director takes along: E9 and G4 in CSV, RFC 4180, nothing a spreadsheet would calculate. */
@ScrublineTest
class RecordsFileTests {

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheets;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    RecordFixture acts;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn director;

    @BeforeEach
    void aTraineeWithANameASpreadsheetWouldCalculate() {
        Theatre first = sheets.theatre(organisations);
        SignedIn trainee = first.organisation().join("=HYPERLINK(\"x\"), Ada", Role.TRAINEE);
        theatre = new Theatre(first.organisation(), first.supervisor(), trainee);
        director = first.organisation().join("Corisande Delmarr", Role.DIRECTOR);
    }

    @Test
    void everyRecordStandsWithNameTimeZoneAndMeaning() throws Exception {
        SignedSheet signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
        SignedIn second = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        versions.sign(theatre, second, RecordEvent.COUNTERSIGNED, signed, "").orThrow();
        acts.contest(theatre, theatre.trainee(), signed.id()).orThrow();

        String file = file(director);
        String line = file.split("\r\n", -1)[1];
        assertThat(file).startsWith("record_id,").endsWith("\r\n");
        assertThat(line)
                .startsWith(signed.id().toString())
                .endsWith("," + signed.contentHash())
                .contains(",\"'=HYPERLINK(\"\"x\"\"), Ada\",")
                .contains(signed.signerName() + ",SUPERVISOR,")
                .contains(signed.signedAt().atZone(signed.signedZone()).toOffsetDateTime() + ",Europe/London,")
                .contains(",false,true,,false,Ottilie Brannock,SUPERVISOR,I countersign,");
        assertThat(file.split("\r\n", -1)).as("head, one record, end").hasSize(3);
    }

    @Test
    void aNewVersionAndAVoidRecordAreThereToo() throws Exception {
        SignedSheet signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
        acts.askVoid(theatre, theatre.supervisor(), signed.id()).orThrow();
        acts.decideVoid(theatre, director, signed.id(), true).orThrow();
        assertThat(file(director)).contains(",Europe/London,true,false,,");
    }

    @Test
    void itIsTheDirectorsAloneOfTheirOwnProgrammeAndIsWrittenDown() throws Exception {
        fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
        for (SignedIn who : List.of(theatre.supervisor(), theatre.trainee())) {
            mvc.perform(get("/records.csv").with(LogIn.as(who))).andExpect(status().isNotFound());
        }
        SignedIn elsewhere = organisations.open().join("Corin Vale", Role.DIRECTOR);
        assertThat(file(elsewhere).split("\r\n", -1)).as("the head alone").hasSize(2);
        file(director);
        assertThat(versions.audited(theatre, "seen-records-file")).isEqualTo(1);
    }

    private String file(SignedIn who) throws Exception {
        byte[] bytes = mvc.perform(get("/records.csv").with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andExpect(header().string("Content-Type", "text/csv;charset=UTF-8"))
                .andReturn()
                .getResponse()
                .getContentAsByteArray();
        assertThat(bytes[0]).as("no byte order mark").isEqualTo((byte) 'r');
        return new String(bytes, StandardCharsets.UTF_8);
    }
}
