package org.scrubline.people.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import jakarta.servlet.http.Cookie;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.people.Invitations;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class InvitationPagesTests {

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Invitations invitations;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    SignedIn administrator;
    String username;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        administrator = organisation.join("Ilse Brandt", Role.ADMINISTRATOR);
        username = "n" + UUID.randomUUID().toString().substring(0, 12);
    }

    @ParameterizedTest
    @CsvSource({"'', DAY, 24", "DAY, DAY, 24", "THREE_DAYS, THREE_DAYS, 72", "WEEK, WEEK, 168"})
    void anInvitationEndsAfterADayUnlessTheAdministratorChoseLonger(String chosen, String written, int hours) {
        String code = invited(chosen);
        assertThat(opens(code, Duration.ofHours(hours).plusMinutes(1))).isEqualTo(422);
        assertThat(opens(code, Duration.ofHours(hours).minusMinutes(1))).isEqualTo(302);
        assertThat(written()).containsExactly(written);
    }

    @Test
    void aLifeThatIsNotOfferedIsRefusedAndNobodyIsAdded() throws Exception {
        add("YEAR")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose how long the invitation works")));
        assertThat(organisation.in(
                        () -> invitations.waiting(organisation.programme().id())))
                .isEmpty();
    }

    @Test
    void thePageSaysHowLongAndWhyShorterIsBetter() throws Exception {
        send(get("/people"))
                .andExpect(content().string(containsString("the shortest that works is best")))
                .andExpect(content().string(containsString("Everyone came in")));
        Cookie[] session = add("WEEK").andReturn().getResponse().getCookies();
        send(get("/people").cookie(session))
                .andExpect(content().string(containsString("It works once, for 7 days,")))
                .andExpect(content().string(containsString("Ottilie Brannock, log-in name " + username)));
    }

    @Test
    void aNewInvitationEndsTheOneBefore() throws Exception {
        String lost = invited("WEEK");
        String fresh = code(again(waiting(), "DAY"));
        assertThat(opens(lost, Duration.ZERO)).isEqualTo(422);
        assertThat(opens(fresh, Duration.ZERO)).isEqualTo(302);
        assertThat(written()).containsExactly("WEEK", "DAY");
    }

    @Test
    void whoCameInAlreadyIsInvitedByNobody() throws Exception {
        String code = invited("DAY");
        String person = waiting();
        opens(code, Duration.ZERO);
        again(person, "DAY")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Choose somebody who never came in")));
        send(get("/people")).andExpect(content().string(not(containsString("log-in name " + username))));
    }

    @Test
    void somebodyWhoCameInThroughAProviderIsInvitedByNobody() throws Exception {
        invited("DAY");
        Invitations.Waiting one = organisation
                .in(() -> invitations.waiting(organisation.programme().id()))
                .get(0);
        jdbc.sql("insert into provider_subject (issuer, subject, account_id, linked_at)"
                        + " values ('https://provider.example', :subject, :account, now())")
                .param("subject", username)
                .param("account", one.accountId())
                .update();
        again(one.personId().toString(), "DAY").andExpect(status().isUnprocessableContent());
    }

    @Test
    void anotherOrganisationsPeopleAreNotInvited() throws Exception {
        invited("DAY");
        String person = waiting();
        SignedIn stranger = organisations.open().join("Pell Ormandine", Role.ADMINISTRATOR);
        mockMvc.perform(post("/people/invitations")
                        .param("person", person)
                        .with(LogIn.as(stranger))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
        assertThat(written()).containsExactly("DAY");
    }

    private ResultActions send(MockHttpServletRequestBuilder request) throws Exception {
        return mockMvc.perform(request.with(LogIn.as(administrator)).with(csrf()));
    }

    private ResultActions add(String life) throws Exception {
        return send(post("/people/persons")
                .param("printedName", "Ottilie Brannock")
                .param("username", username)
                .param("role", "SUPERVISOR")
                .param("life", life));
    }

    private String invited(String life) {
        try {
            return code(add(life));
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private static String code(ResultActions answer) throws Exception {
        return (String) answer.andExpect(redirectedUrl("/people"))
                .andReturn()
                .getFlashMap()
                .get("code");
    }

    private ResultActions again(String person, String life) throws Exception {
        return send(post("/people/invitations").param("person", person).param("life", life));
    }

    private String waiting() {
        return organisation
                .in(() -> invitations.waiting(organisation.programme().id()))
                .get(0)
                .personId()
                .toString();
    }

    private int opens(String code, Duration later) {
        return clock.at(clock.instant().plus(later), () -> {
            try {
                return mockMvc.perform(post("/welcome")
                                .param("code", code)
                                .param("password", "nine herons on the quay")
                                .with(csrf()))
                        .andReturn()
                        .getResponse()
                        .getStatus();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
    }

    private List<String> written() {
        return organisation.in(() -> transaction.execute(status -> jdbc.sql(
                        "select value_after from audit_entry where action = 'person-invited' order by sequence")
                .query(String.class)
                .list()));
    }
}
