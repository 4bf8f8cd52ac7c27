package org.scrubline.signoff.web;

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

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SelfScores;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.signoff.VersionFixture;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** The signed record and who may read it. */
@ScrublineTest
class SignedRecordTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    Signing signing;

    @Autowired
    SignedRecords records;

    @Autowired
    SelfScores selfScores;

    @Autowired
    Clock clock;

    Theatre theatre;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
    }

    @Test
    void g4EveryReaderSeesTheSameNameTimeWithZoneAndMeaningAtOnce() throws Exception {
        SignedSheet signed = signed();
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        SignedIn member = theatre.organisation().join("Tobias Renn", Role.COMMITTEE_MEMBER);
        for (SignedIn who : List.of(theatre.trainee(), theatre.supervisor(), director, member)) {
            read(who, signed.id())
                    .andExpect(status().isOk())
                    .andExpect(content()
                            .string(allOf(
                                    containsString("<b>Ansel Verrin</b>, <span>supervisor</span>"),
                                    containsString("I observed and scored this case"),
                                    containsString(java.time.format.DateTimeFormatter.ofPattern(
                                                    "d MMM uuuu, HH:mm z", java.util.Locale.ENGLISH)
                                            .format(signed.signedAt().atZone(signed.signedZone()))),
                                    containsString(signed.contentHash()),
                                    containsString("independent on this case"),
                                    containsString("Calm hands."),
                                    containsString("Supports, does not replace, the judgement"))));
        }
    }

    @Test
    void forEveryoneElseItIsTheSameNothingAsARecordThatNeverWas() throws Exception {
        SignedSheet signed = needingNoSecondSignature();
        Theatre elsewhere = sheetFixture.theatre(organisations);
        List<SignedIn> others = List.of(
                theatre.organisation().join("Ilse Tavener", Role.TRAINEE),
                theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR),
                theatre.organisation().join("Sela Marr", Role.ADMINISTRATOR),
                elsewhere.trainee(),
                elsewhere.supervisor(),
                elsewhere.organisation().join("Corin Vale", Role.DIRECTOR));
        for (SignedIn who : others) {
            assertThat(bodyOf404(who, signed.id())).as(who.printedName()).isEqualTo(bodyOf404(who, UUID.randomUUID()));
            mockMvc.perform(get("/sheets/{id}/signed", signed.sheetId()).with(LogIn.as(who)))
                    .andExpect(status().isNotFound());
        }
    }

    @Test
    void theTraineesOwnLevelsStandUnderTheSupervisors() throws Exception {
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(3)));
        UUID caseId = fixture.read(theatre, sheet).caseId();
        theatre.organisation()
                .in(() -> selfScores
                        .save(theatre.trainee(), caseId, Map.of("TF09", 2))
                        .orThrow());
        mockMvc.perform(get("/sheets/{id}/review", sheet).with(LogIn.as(theatre.supervisor())))
                .andExpect(content().string(not(containsString("Trainee’s own level"))));

        SignedSheet signed = sign(sheet);
        String page =
                read(theatre.trainee(), signed.id()).andReturn().getResponse().getContentAsString();
        assertThat(page.split("Trainee’s own level:", -1)).hasSize(2);
        assertThat(page.substring(page.indexOf("id=\"signed-TF09\""), page.indexOf("id=\"signed-TF10\"")))
                .contains("Trainee’s own level:", "<b class=\"number\">2</b>");
    }

    @Test
    void aRemarkOfTheTraineeStandsUnderTheRecordForEveryReader() throws Exception {
        SignedSheet signed = signed();
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        remark(theatre.trainee(), signed.id(), "The punch slipped;\nI see why now. <b>")
                .andExpect(redirectedUrl("/signed/" + signed.id()));
        remark(theatre.trainee(), signed.id(), "The punch slipped;\nI see why now. <b>")
                .andExpect(redirectedUrl("/signed/" + signed.id()));

        for (SignedIn who : List.of(theatre.trainee(), theatre.supervisor(), director)) {
            read(who, signed.id())
                    .andExpect(content()
                            .string(allOf(
                                    containsString("<p>The punch slipped;</p>"),
                                    containsString("<p>I see why now. &lt;b&gt;</p>"),
                                    containsString("Fenna Hallinor"))));
        }
        assertThat(theatre.organisation().in(() -> records.remarks(signed.sheetId())))
                .as("sent twice, kept once")
                .hasSize(1);
    }

    @Test
    void onlyTheTraineeCanRemark() throws Exception {
        SignedSheet signed = signed();
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        for (SignedIn who : List.of(theatre.supervisor(), director)) {
            remark(who, signed.id(), "Noted.").andExpect(status().isNotFound());
            read(who, signed.id()).andExpect(content().string(not(containsString("name=\"body\""))));
        }
        read(theatre.trainee(), signed.id()).andExpect(content().string(containsString("name=\"body\"")));
    }

    @Test
    void anEmptyOrTooLongRemarkIsRefusedAndKeptInTheBox() throws Exception {
        SignedSheet signed = signed();
        remark(theatre.trainee(), signed.id(), "  ")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Write your remark first.")));
        String long2001 = "é".repeat(2001);
        remark(theatre.trainee(), signed.id(), long2001)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("href=\"#body\""), containsString(long2001))));
        remark(theatre.trainee(), signed.id(), "é".repeat(2000)).andExpect(status().is3xxRedirection());
    }

    @Test
    void theListsAreNewestFirstAndSayWhenTheyAreEmpty() throws Exception {
        mockMvc.perform(get("/signed").with(LogIn.as(theatre.supervisor())))
                .andExpect(content().string(containsString("Nothing signed yet")));
        mockMvc.perform(get("/feedback").with(LogIn.as(theatre.trainee())))
                .andExpect(content().string(containsString("No feedback yet")));
        List<String> links = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            links.add(0, "/signed/" + signed().id());
        }

        for (String path : List.of("/signed", "/feedback")) {
            SignedIn who = path.equals("/signed") ? theatre.supervisor() : theatre.trainee();
            mockMvc.perform(get(path).with(LogIn.as(who)))
                    .andExpect(status().isOk())
                    .andExpect(result -> assertThat(result.getResponse().getContentAsString())
                            .containsSubsequence(links));
        }
    }

    @Test
    void eachListIsForItsOwnRole() throws Exception {
        mockMvc.perform(get("/signed").with(LogIn.as(theatre.trainee()))).andExpect(redirectedUrl("/feedback"));
        mockMvc.perform(get("/feedback").with(LogIn.as(theatre.supervisor()))).andExpect(status().isNotFound());
        signed();
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        mockMvc.perform(get("/signed").with(LogIn.as(colleague)))
                .andExpect(content().string(containsString("Nothing signed yet")));
    }

    /** A record no colleague has a reason to read: of an established scorer, not the trainee's first of its kind. */
    private SignedSheet needingNoSecondSignature() {
        versions.set(theatre, SettingKey.NEW_SCORER_UNTIL, 0);
        signed();
        return signed();
    }

    private SignedSheet signed() {
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(3)));
        fixture.change(theatre, sheet, new SheetChange.SetFeedback("Calm hands.", "Loosen the suture earlier."));
        return sign(sheet);
    }

    private SignedSheet sign(UUID sheet) {
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
    }

    private ResultActions read(SignedIn who, UUID id) throws Exception {
        return mockMvc.perform(get("/signed/{id}", id).with(LogIn.as(who)));
    }

    private ResultActions remark(SignedIn who, UUID id, String body) throws Exception {
        return mockMvc.perform(post("/signed/{id}/remarks", id)
                .param("body", body)
                .with(LogIn.as(who))
                .with(csrf()));
    }

    /** Tokens differ from answer to answer by design and are taken out. */
    private String bodyOf404(SignedIn who, UUID id) throws Exception {
        return read(who, id)
                .andExpect(status().isNotFound())
                .andReturn()
                .getResponse()
                .getContentAsString()
                .replaceAll("(content|value)=\"[\\w+/=-]{60,}\"", "token")
                .replaceAll("nonce=\"[^\"]*\"", "nonce");
    }
}
