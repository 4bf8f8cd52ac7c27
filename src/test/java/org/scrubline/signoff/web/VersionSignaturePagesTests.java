package org.scrubline.signoff.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;

/** Countersigning, answering and releasing as people meet them. */
@ScrublineTest
class VersionSignaturePagesTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn second;
    SignedIn director;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        second = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
    }

    @Test
    void theTraineeSignsHavingReadItAndEveryReaderSeesTheSameNameRoleTimeAndMeaning() throws Exception {
        SignedSheet signed = signed();
        page("/signed/" + signed.id(), theatre.trainee())
                .andExpect(content()
                        .string(allOf(containsString("I have read it"), containsString("I don’t acknowledge it"))));
        send(theatre.trainee(), signed, "ACKNOWLEDGED", "Clear to me now.")
                .andExpect(redirectedUrl("/signed/" + signed.id()));
        for (SignedIn who : List.of(theatre.trainee(), theatre.supervisor(), director)) {
            page("/signed/" + signed.id(), who)
                    .andExpect(content()
                            .string(allOf(
                                    containsString("I have read this record"),
                                    containsString("<b>Fenna Hallinor</b>, <span>trainee</span>"),
                                    containsString("Clear to me now."),
                                    containsString("Received by the server"),
                                    not(containsString("Clock of the device")),
                                    not(containsString("??")))));
        }
    }

    @Test
    void aNoWithoutAReasonIsRefusedInPlace() throws Exception {
        SignedSheet signed = signed();
        send(theatre.trainee(), signed, "NOT_ACKNOWLEDGED", "")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(allOf(containsString("Say why."), containsString("href=\"#words\""))));
        send(theatre.trainee(), signed, "NOT_ACKNOWLEDGED", "Not my case.").andExpect(status().is3xxRedirection());
        page("/signed/" + signed.id(), theatre.supervisor())
                .andExpect(content()
                        .string(allOf(
                                containsString("I do not acknowledge this record"), containsString("Not my case."))));
    }

    @Test
    void aColleagueFindsTheRecordReadsItAndCountersigns() throws Exception {
        page("/to-countersign", second).andExpect(content().string(containsString("Nothing to countersign")));
        SignedSheet signed = signed();
        page("/to-countersign", second)
                .andExpect(content()
                        .string(allOf(
                                containsString("/signed/" + signed.id()),
                                containsString("Fenna Hallinor"),
                                containsString("I observed and scored this case: Ansel Verrin, supervisor"))));
        page("/signed/" + signed.id(), second)
                .andExpect(content()
                        .string(allOf(
                                containsString("awaiting countersignature"), containsString("Your countersignature"))));

        send(second, signed, "COUNTERSIGNED", "").andExpect(redirectedUrl("/signed/" + signed.id()));
        page("/signed/" + signed.id(), second)
                .andExpect(content()
                        .string(allOf(
                                containsString("I countersign"),
                                containsString("<b>Ottilie Brannock</b>, <span>supervisor</span>"),
                                not(containsString("awaiting countersignature")))));
        page("/to-countersign", second).andExpect(content().string(containsString("Nothing to countersign")));
    }

    @Test
    void theListsOfBothSidesSayThatItIsAwaited() throws Exception {
        SignedSheet signed = signed();
        for (List<Object> one : List.<List<Object>>of(
                List.of("/signed", theatre.supervisor()), List.of("/feedback", theatre.trainee()))) {
            page((String) one.get(0), (SignedIn) one.get(1))
                    .andExpect(content().string(containsString("awaiting countersignature")));
        }
        send(second, signed, "COUNTERSIGNED", "").andExpect(status().is3xxRedirection());
        page("/signed", theatre.supervisor())
                .andExpect(content().string(not(containsString("awaiting countersignature"))));
    }

    @Test
    void g9TheScorerIsForbiddenAndAStrangerFindsNothing() throws Exception {
        SignedSheet signed = signed();
        send(theatre.supervisor(), signed, "COUNTERSIGNED", "")
                .andExpect(status().isForbidden())
                .andExpect(content().string(containsString("You signed this record yourself.")));
        Theatre elsewhere = sheetFixture.theatre(organisations);
        send(elsewhere.supervisor(), signed, "COUNTERSIGNED", "").andExpect(status().isNotFound());
        send(second, signed, "SIGNED", "").andExpect(status().isNotFound());
        send(second, signed, "NO_SUCH_EVENT", "").andExpect(status().isBadRequest());
        page("/to-countersign", theatre.trainee()).andExpect(status().isNotFound());
    }

    @Test
    void whoComesSecondIsLedBackToTheListWithASentence() throws Exception {
        SignedSheet signed = signed();
        SignedIn third = theatre.organisation().join("Ludo Karsenmark", Role.SUPERVISOR);
        send(third, signed, "COUNTERSIGNED", "").andExpect(status().is3xxRedirection());
        send(second, signed, "COUNTERSIGNED", "")
                .andExpect(redirectedUrl("/to-countersign"))
                .andExpect(flash().attribute("flash", containsString("does not wait for a countersignature any more")));
        page("/signed/" + signed.id(), second).andExpect(status().isNotFound());
    }

    @Test
    void theDirectorSeesWhoCouldNotCountersignAndWhy() throws Exception {
        page("/open-signatures", director)
                .andExpect(content()
                        .string(allOf(
                                containsString("No sheet is closed"),
                                containsString("Nothing waits for a countersignature"))));
        SignedSheet signed = signed();
        send(second, signed, "COUNTERSIGN_REFUSED", "I was not there.").andExpect(status().is3xxRedirection());
        page("/open-signatures", director)
                .andExpect(content()
                        .string(allOf(
                                containsString("/signed/" + signed.id()),
                                containsString("Could not countersign: Ottilie Brannock"),
                                containsString("I was not there."))));
        page("/open-signatures", second).andExpect(status().isNotFound());
    }

    @Test
    void theDirectorReleasesASheetAndTheRecordSaysSo() throws Exception {
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofDays(15)));
        page("/to-score", theatre.supervisor())
                .andExpect(content().string(containsString("closed: ask your programme director for a release")));
        page("/open-signatures", director).andExpect(content().string(containsString("/late-releases/" + sheet)));
        release(sheet, "").andExpect(status().isUnprocessableContent());
        release(sheet, "The scorer was on leave.").andExpect(redirectedUrl("/open-signatures"));
        page("/late-releases/" + sheet, director)
                .andExpect(content()
                        .string(allOf(
                                containsString("released by Corisande Delmarr"),
                                not(containsString("name=\"reason\"")))));
        page("/to-score", theatre.supervisor())
                .andExpect(content().string(containsString("released by your programme director")));
        page("/sheets/" + sheet + "/review", theatre.supervisor())
                .andExpect(content()
                        .string(allOf(
                                containsString("This will be a late entry"),
                                containsString("Released by Corisande Delmarr"),
                                containsString("A second supervisor will be asked to countersign"))));

        mockMvc.perform(post("/sheets/{id}/sign", sheet)
                        .param("hash", fixture.preview(theatre, sheet).contentHash())
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(theatre.supervisor()))
                        .with(csrf()))
                .andExpect(status().is3xxRedirection())
                .andExpect(flash().attribute("flash", containsString("countersign")));
        mockMvc.perform(get("/sheets/{id}/signed", sheet).with(LogIn.as(theatre.trainee())))
                .andExpect(result -> page(result.getResponse().getRedirectedUrl(), theatre.trainee())
                        .andExpect(content()
                                .string(allOf(
                                        containsString("released by Corisande Delmarr, programme director"),
                                        containsString("because: The scorer was on leave.")))));
        page("/late-releases/" + sheet, director).andExpect(status().isNotFound());
    }

    @Test
    void beforeTheFirstSignatureTheStatementIsAskedForAndLeadsBack() throws Exception {
        SignedIn fresh = theatre.organisation().joinNew("Hesper Vantrelle", Role.SUPERVISOR);
        SignedSheet signed = signed();
        page("/signed/" + signed.id(), fresh)
                .andExpect(content()
                        .string(allOf(
                                containsString("Before your first signature"),
                                not(containsString("name=\"password\"")))));
        send(fresh, signed, "COUNTERSIGNED", "")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("href=\"#statement\"")));
        accept(fresh, "/signed/" + signed.id()).andExpect(redirectedUrl("/signed/" + signed.id()));
        page("/signed/" + signed.id(), fresh).andExpect(content().string(containsString("name=\"password\"")));
        for (String astray : List.of("https://elsewhere.example", "//elsewhere.example", "/signed/../logout", "")) {
            accept(fresh, astray).andExpect(redirectedUrl("/"));
        }
    }

    @Test
    void g12ASignerWhoIsRenamedStandsAsSignedWithTheNameOfToday() throws Exception {
        SignedSheet signed = signed();
        send(theatre.trainee(), signed, "ACKNOWLEDGED", "").andExpect(status().is3xxRedirection());
        try (Connection superuser = TestDatabase.superuser();
                PreparedStatement rename =
                        superuser.prepareStatement("update person set printed_name = ? where id = ?")) {
            rename.setString(1, "Fenna Marrow");
            rename.setObject(2, theatre.trainee().personId());
            assertThat(rename.executeUpdate()).isEqualTo(1);
        }
        page("/signed/" + signed.id(), director)
                .andExpect(content()
                        .string(allOf(containsString("<b>Fenna Hallinor</b>"), containsString("now Fenna Marrow"))));
    }

    private SignedSheet signed() {
        return fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
    }

    private ResultActions page(String path, SignedIn who) throws Exception {
        return mockMvc.perform(get(path).with(LogIn.as(who)));
    }

    private ResultActions send(SignedIn who, SignedSheet signed, String event, String words) throws Exception {
        return mockMvc.perform(post("/signed/{id}/signatures", signed.id())
                .param("event", event)
                .param("hash", signed.contentHash())
                .param("words", words)
                .param("password", TestOrganisations.PASSWORD)
                .with(LogIn.as(who))
                .with(csrf()));
    }

    private ResultActions release(UUID sheet, String reason) throws Exception {
        return mockMvc.perform(post("/late-releases/{id}", sheet)
                .param("reason", reason)
                .param("password", TestOrganisations.PASSWORD)
                .with(LogIn.as(director))
                .with(csrf()));
    }

    private ResultActions accept(SignedIn who, String back) throws Exception {
        return mockMvc.perform(post("/signing-statement")
                .param("back", back)
                .with(LogIn.as(who))
                .with(csrf()));
    }
}
