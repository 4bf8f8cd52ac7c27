package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.OpenSheets;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.people.Roles;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/** Open sheets of a supervisor who leaves, on their way to another one. */
@ScrublineTest
class HandOverTests {

    private static final String WHY = "The supervisor has left.";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    OpenSheets sheets;

    @Autowired
    Signing signing;

    @Autowired
    Roles roles;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedIn director;
    SignedIn colleague;
    UUID programme;
    UUID sheet;

    @BeforeEach
    void open() {
        theatre = sheetFixture.theatre(organisations);
        programme = theatre.organisation().programme().id();
        director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(1)));
    }

    @Test
    void theContentGoesAlongAndTheOtherSupervisorSignsInTheirOwnName() throws Exception {
        Sheet before = fixture.read(theatre, sheet);
        leave();
        assertThat(theatre.organisation().in(() -> sheets.holders(director, programme)))
                .singleElement()
                .satisfies(holder -> assertThat(holder.supervises()).isFalse());
        handOver(colleague).orThrow();

        Sheet after = fixture.read(theatre, sheet);
        assertThat(after.steps()).isEqualTo(before.steps());
        assertThat(after.scorerId()).isEqualTo(colleague.personId());
        mockMvc.perform(get("/sheets/{id}", sheet).with(LogIn.as(colleague)))
                .andExpect(content()
                        .string(allOf(
                                containsString("Begun by another supervisor"),
                                containsString("Ansel Verrin answered"))));
        mockMvc.perform(get("/sheets/{id}/table", sheet).with(LogIn.as(colleague)))
                .andExpect(content()
                        .string(allOf(
                                containsString("Another supervisor answered"), not(containsString("Ansel Verrin")))));
        mockMvc.perform(get("/sheets/{id}/review", sheet).with(LogIn.as(colleague)))
                .andExpect(content().string(containsString("Ansel Verrin answered")));
        SignedSheet signed = theatre.organisation()
                .in(() -> signing.signWithoutCredential(colleague, sheet).orThrow());
        assertThat(signed.signerId()).isEqualTo(colleague.personId());
    }

    @Test
    void whoHandedItOverCanNeitherOpenNorSignIt() {
        handOver(colleague).orThrow();
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() ->
                        theatre.organisation().in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)));
    }

    @Test
    void aSignedSheetStaysWithItsSigner() {
        theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
        assertThat(key(handOver(colleague))).isEqualTo("refusal.open-sheet.closed");
    }

    @Test
    void onlyAnotherSupervisorOfTheProgrammeCanTakeItAndAReasonIsAskedFor() {
        SignedIn outside = organisations.open().join("Somebody Else", Role.SUPERVISOR);
        assertThat(key(handOver(outside))).isEqualTo("refusal.case.supervisor.unknown");
        assertThat(key(handOver(theatre.supervisor()))).isEqualTo("refusal.case.supervisor.asked");
        assertThat(key(theatre.organisation()
                        .in(() -> sheets.handOver(director, programme, sheet, colleague.personId(), " "))))
                .isEqualTo("refusal.case.reason");
        assertThat(fixture.read(theatre, sheet).scorerId())
                .isEqualTo(theatre.supervisor().personId());
    }

    @Test
    void onlyThoseWhoLeadTheProgrammeHandSheetsOver() {
        SignedIn abroad = organisations.open().join("Somebody Else", Role.DIRECTOR);
        for (SignedIn nobody : List.of(theatre.supervisor(), theatre.trainee(), colleague, abroad)) {
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> theatre.organisation()
                            .in(() -> sheets.handOver(nobody, programme, sheet, colleague.personId(), WHY)));
        }
    }

    /** Half of the threads sign as the one who leaves, half hand over: whoever comes first, it happens once. */
    @Test
    void aSignatureAndAHandOverInTheSameMomentAreNeverBoth() throws Exception {
        AtomicInteger turn = new AtomicInteger();
        List<String> answers = AtOnce.run(() -> turn.getAndIncrement() % 2 == 0 ? sign() : hand());
        Sheet now = fixture.read(theatre, sheet);
        boolean signed = now.state() == SheetState.SIGNED;
        assertThat(now.scorerId()).isEqualTo(signed ? theatre.supervisor().personId() : colleague.personId());
        assertThat(answers.stream().filter("handed"::equals)).hasSize(signed ? 0 : 1);
        assertThat(answers.contains("signed")).isEqualTo(signed);
    }

    private String sign() {
        try {
            return theatre.organisation()
                    .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet))
                    .fold(record -> "signed", reasons -> "refused");
        } catch (NotFound gone) {
            return "gone";
        }
    }

    private String hand() {
        return handOver(colleague).fold(id -> "handed", reasons -> "refused");
    }

    @Test
    void thePageListsTheSheetsAndHandsOneOver() throws Exception {
        leave();
        String page = "/open-sheets/" + theatre.supervisor().personId();
        mockMvc.perform(get("/open-sheets").with(LogIn.as(director)))
                .andExpect(content()
                        .string(allOf(
                                containsString("Ansel Verrin"),
                                containsString("has left"),
                                not(containsString("??")))));
        mockMvc.perform(post(page)
                        .param("sheet", sheet.toString())
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
        mockMvc.perform(post(page)
                        .param("sheet", sheet.toString())
                        .param("supervisor", colleague.personId().toString())
                        .param("reason", WHY)
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(status().is3xxRedirection());
        mockMvc.perform(get(page).with(LogIn.as(director)))
                .andExpect(content().string(containsString("This supervisor has no open sheet in the programme.")));
        mockMvc.perform(get("/open-sheets/" + UUID.randomUUID()).with(LogIn.as(director)))
                .andExpect(status().isNotFound());
        mockMvc.perform(get("/open-sheets").with(LogIn.as(colleague))).andExpect(status().isNotFound());
    }

    private void leave() {
        theatre.organisation()
                .in(() -> roles.end(programme, theatre.supervisor().personId(), Role.SUPERVISOR, "Moved away")
                        .orThrow());
    }

    private Attempt<UUID> handOver(SignedIn to) {
        return theatre.organisation().in(() -> sheets.handOver(director, programme, sheet, to.personId(), WHY));
    }

    private static String key(Attempt<UUID> attempt) {
        return attempt.fold(sheet -> "done", reasons -> reasons.get(0).messageKey());
    }
}
