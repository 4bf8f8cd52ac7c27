package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

@ScrublineTest
class ReflectionsTests {

    private static final String NOTE = "Slow down before the second cut and breathe out.";

    @Autowired
    private MockMvc mvc;

    @Autowired
    private Reflections reflections;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private History history;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;
    private SignedIn trainee;

    @BeforeEach
    void openAProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        trainee = here.trainee();
    }

    @Test
    void aNoteIsKeptForItsAuthorUntilTheyRemoveIt() {
        UUID id = write(trainee, Procedures.TRAB_FORNIX, "TF09", "  " + NOTE + "\r\n")
                .orThrow();
        assertThat(own(trainee)).singleElement().satisfies(note -> {
            assertThat(note.note()).isEqualTo(NOTE);
            assertThat(note.step()).isEqualTo("TF09");
        });

        here.organisation().in(() -> {
            reflections.remove(trainee, id);
            return id;
        });

        assertThat(own(trainee)).isEmpty();
    }

    @Test
    void nobodyElseReadsOrRemovesIt() {
        UUID id = write(trainee, "", "", NOTE).orThrow();
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);

        assertThat(own(peer)).isEmpty();
        assertThat(own(here.director())).isEmpty();
        assertThatThrownBy(() -> here.organisation().in(() -> {
                    reflections.remove(peer, id);
                    return id;
                }))
                .isInstanceOf(NotFound.class);
        assertThat(own(trainee)).hasSize(1);
    }

    @Test
    void anEmptyNoteOrOneThatPointsToAPatientIsRefused() {
        assertThat(reason(write(trainee, "", "", "  "))).isEqualTo("refusal.reflection.empty");
        assertThat(reason(write(trainee, "", "", "x".repeat(Reflections.LENGTH + 1))))
                .isEqualTo("refusal.text.length");
        assertThat(reason(write(trainee, "", "", "Born 03/04/1951, be gentle.")))
                .startsWith("refusal.identity.");
        assertThat(own(trainee)).isEmpty();
    }

    @Test
    void onlyATraineeWritesAndOnlyAboutStepsThereAre() {
        assertThatThrownBy(() -> write(here.supervisor(), "", "", NOTE)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> write(trainee, "NO_SUCH", "", NOTE)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> write(trainee, Procedures.TRAB_FORNIX, "XX99", NOTE))
                .isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> write(trainee, "", "TF09", NOTE)).isInstanceOf(NotFound.class);
    }

    @Test
    void thePageKeepsWhatWasTypedWhenItIsRefused() throws Exception {
        mvc.perform(post("/reflections")
                        .param("procedure", Procedures.TRAB_FORNIX)
                        .param("step", "TF09")
                        .param("note", "Born 03/04/1951, be gentle.")
                        .with(csrf())
                        .with(LogIn.as(trainee)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(result -> assertThat(result.getResponse().getContentAsString())
                        .contains("be gentle.", "value=\"TF09\"")
                        .doesNotContain("??"));
    }

    @Test
    void aNoteStandsOnItsAuthorsPageAndOnNoPageOfAnybodyElse() throws Exception {
        SignedSheet signed = history.signed(
                here.organisation(), trainee, here.supervisor(), Instant.now().minus(Duration.ofDays(3)), Map.of());
        mvc.perform(post("/reflections").param("note", NOTE).with(csrf()).with(LogIn.as(trainee)))
                .andExpect(redirectedUrl("/reflections"));

        assertThat(page("/reflections", trainee))
                .contains(NOTE, "training as a whole")
                .doesNotContain("??");
        for (String path : List.of("/progress/" + trainee.personId(), "/signed/" + signed.id())) {
            assertThat(page(path, here.director()))
                    .contains(trainee.printedName())
                    .doesNotContain(NOTE, "/reflections");
        }
        mvc.perform(get("/reflections").with(LogIn.as(here.director()))).andExpect(status().isNotFound());
    }

    private String page(String path, SignedIn who) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private Attempt<UUID> write(SignedIn who, String procedure, String step, String note) {
        return here.organisation().in(() -> reflections.write(who, procedure, step, note));
    }

    private List<Reflection> own(SignedIn who) {
        return here.organisation().in(() -> reflections.of(who));
    }

    private static String reason(Attempt<UUID> attempt) {
        return attempt.fold(id -> "kept", reasons -> reasons.get(0).messageKey());
    }
}
