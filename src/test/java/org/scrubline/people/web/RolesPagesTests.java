package org.scrubline.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.Roles;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class RolesPagesTests {

    private static final String PAGE = "/people/roles";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Roles roles;

    @Autowired
    Rubrics rubrics;

    @Autowired
    History history;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    SignedIn administrator;
    SignedIn supervisor;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        administrator = organisation.join("Ilse Brandt", Role.ADMINISTRATOR);
        supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
    }

    @Test
    void aRoleEndsWithItsReasonFromTheNextPageOn() throws Exception {
        mockMvc.perform(get("/to-score").with(LogIn.as(supervisor))).andExpect(status().isOk());
        end(supervisor, Role.SUPERVISOR, "Moved to another hospital").andExpect(redirectedUrl(PAGE));

        SignedIn afterwards = organisation.now(supervisor.personId());
        assertThat(afterwards.grants()).isEmpty();
        mockMvc.perform(get("/to-score").with(LogIn.as(afterwards))).andExpect(status().isNotFound());
        assertThat(written("role-ended")).containsExactly("SUPERVISOR: Moved to another hospital");
    }

    @Test
    void whatALeaverSignedStaysReadableWithNameAndRole() throws Exception {
        SignedIn director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        SignedIn trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        SignedSheet signed =
                history.signed(organisation, trainee, supervisor, Instant.now().minus(Duration.ofDays(2)), Map.of());
        end(supervisor, Role.SUPERVISOR, "Retired").andExpect(redirectedUrl(PAGE));
        end(trainee, Role.TRAINEE, "Training finished").andExpect(redirectedUrl(PAGE));

        for (SignedIn reader : List.of(director, organisation.now(trainee.personId()))) {
            mockMvc.perform(get("/signed/{id}", signed.id()).with(LogIn.as(reader)))
                    .andExpect(status().isOk())
                    .andExpect(content().string(containsString("Ansel Verrin")));
        }
        mockMvc.perform(get("/cohort").with(LogIn.as(director)))
                .andExpect(content().string(containsString("Fenna Hallinor")));
    }

    @Test
    void aRoleIsGivenBackToSomebodyTheProgrammeKnows() throws Exception {
        end(supervisor, Role.SUPERVISOR, "On leave").andExpect(redirectedUrl(PAGE));
        give(supervisor, Role.DIRECTOR).andExpect(redirectedUrl(PAGE));
        give(supervisor, Role.DIRECTOR).andExpect(redirectedUrl(PAGE));
        assertThat(organisation.now(supervisor.personId()).grants())
                .extracting(SignedIn.Grant::role)
                .containsExactly(Role.DIRECTOR);
        assertThat(written("role-given")).contains("DIRECTOR: null");
    }

    @Test
    void withoutAReasonOrARoleThatIsHeldNothingEnds() throws Exception {
        end(supervisor, Role.SUPERVISOR, " ")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Say why the role ends.")));
        end(supervisor, Role.DIRECTOR, "Left")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose a role that is held now.")));
        end(supervisor, Role.SUPERVISOR, "x".repeat(301)).andExpect(status().isUnprocessableContent());
        assertThat(organisation.now(supervisor.personId()).grants()).hasSize(1);
        assertThat(written("role-ended")).isEmpty();
    }

    @Test
    void aPersonOfAnotherOrganisationOrAnUnknownRoleIsNotTaken() throws Exception {
        SignedIn stranger = organisations.open().join("Corin Hale", Role.SUPERVISOR);
        give(stranger, Role.DIRECTOR).andExpect(status().isUnprocessableContent());
        end(stranger, Role.SUPERVISOR, "Left").andExpect(status().isUnprocessableContent());
        mockMvc.perform(post(PAGE)
                        .param("person", supervisor.personId().toString())
                        .param("role", "KING")
                        .with(LogIn.as(administrator))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
    }

    @Test
    void theLastAdministratorStaysAlsoWhenTwoEndEachOthersRoleAtOnce() throws Exception {
        end(administrator, Role.ADMINISTRATOR, "Left")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("This is the last administrator.")));

        SignedIn second = organisation.join("Corin Hale", Role.ADMINISTRATOR);
        CyclicBarrier start = new CyclicBarrier(2);
        var threads = Executors.newFixedThreadPool(2);
        try {
            Callable<Attempt<Roles.Held>> one = () -> ended(start, second);
            Callable<Attempt<Roles.Held>> other = () -> ended(start, administrator);
            int done = 0;
            for (Future<Attempt<Roles.Held>> answer : threads.invokeAll(List.of(one, other))) {
                done += answer.get().fold(held -> 1, reasons -> 0);
            }
            assertThat(done).isEqualTo(1);
        } finally {
            threads.shutdownNow();
        }
        assertThat(organisation.in(() -> roles.held(organisation.programme().id())))
                .filteredOn(held -> held.role() == Role.ADMINISTRATOR)
                .hasSize(1);
    }

    private Attempt<Roles.Held> ended(CyclicBarrier start, SignedIn whose) throws Exception {
        start.await();
        return organisation.in(() ->
                roles.end(organisation.programme().id(), whose.personId(), Role.ADMINISTRATOR, "Left the programme"));
    }

    private ResultActions end(SignedIn whose, Role role, String reason) throws Exception {
        return mockMvc.perform(post(PAGE + "/end")
                .param("held", whose.personId() + "/" + role)
                .param("reason", reason)
                .with(LogIn.as(administrator))
                .with(csrf()));
    }

    private ResultActions give(SignedIn whom, Role role) throws Exception {
        return mockMvc.perform(post(PAGE)
                .param("person", whom.personId().toString())
                .param("role", role.name())
                .with(LogIn.as(administrator))
                .with(csrf()));
    }

    private List<String> written(String action) {
        return organisation.in(() -> transaction.execute(status -> jdbc.sql(
                        "select value_after || ': ' || coalesce(reason, 'null') from audit_entry where action = :action")
                .param("action", action)
                .query(String.class)
                .list()));
    }
}
