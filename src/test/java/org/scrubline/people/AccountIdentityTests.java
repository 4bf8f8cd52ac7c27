package org.scrubline.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** E11: an account belongs to one person for ever; E13: nobody else can get at its password. */
@ScrublineTest
class AccountIdentityTests {

    private static final String CHOSEN = "three quiet bicycles";

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    Accounts accounts;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    SignedIn owner;

    @BeforeEach
    void join() {
        organisation = organisations.open();
        owner = organisation.join("Ansel Verrin", Role.SUPERVISOR);
    }

    @Test
    void e11ANameOnceGivenIsNeverGivenAgainEvenWhenItsAccountIsClosed() {
        organisation.in(
                () -> transaction.execute(status -> jdbc.sql("update login_account set enabled = false where id = :id")
                        .param("id", owner.accountId())
                        .update()));
        for (String name : List.of(owner.username(), owner.username().toUpperCase(Locale.ROOT))) {
            assertThat(keys(add(name))).containsExactly("refusal.username.taken");
        }
        assertThat(keys(add("x" + UUID.randomUUID().toString().substring(0, 12))))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "delete from login_account",
                "update login_account set username = 'somebody'",
                "update login_account set id = gen_random_uuid()",
                "delete from account_organisation",
                "update account_organisation set account_id = account_id"
            })
    void e11TheServerItselfCanNeitherRemoveNorRenameNorReassignAnAccount(String statement) {
        assertThatThrownBy(() -> organisation.in(
                        () -> transaction.execute(status -> jdbc.sql(statement).update())))
                .rootCause()
                .hasMessageContaining("permission denied");
    }

    @Test
    void e11UntilTheInvitationIsAcceptedTheAccountProvesNobody() {
        People.NewPerson added =
                add("n" + UUID.randomUUID().toString().substring(0, 12)).orThrow();
        for (String guess : List.of("", "null", CHOSEN)) {
            assertThat(keys(accounts.confirmPassword(added.accountId(), guess)))
                    .containsExactly("refusal.password.none");
        }
        String code = accounts.invite(added.accountId(), InvitationLife.DAY);
        assertThat(keys(accounts.acceptInvitation(code, CHOSEN))).isEmpty();
        assertThat(keys(accounts.confirmPassword(added.accountId(), CHOSEN))).isEmpty();
    }

    @Test
    void e13AnInvitationServesOnce() {
        People.NewPerson added =
                add("n" + UUID.randomUUID().toString().substring(0, 12)).orThrow();
        String code = accounts.invite(added.accountId(), InvitationLife.DAY);
        accounts.acceptInvitation(code, CHOSEN).orThrow();
        assertThat(keys(accounts.acceptInvitation(code, "another three bicycles")))
                .containsExactly("refusal.invitation.code");
        assertThat(keys(accounts.confirmPassword(added.accountId(), CHOSEN))).isEmpty();
    }

    @Test
    void e13AnAccountWithAPasswordCanBeInvitedByNobody() {
        assertThatThrownBy(() -> accounts.invite(owner.accountId(), InvitationLife.DAY))
                .isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> accounts.setFirstPassword(owner.accountId(), CHOSEN))
                .isInstanceOf(IllegalStateException.class);
        assertThat(keys(accounts.confirmPassword(owner.accountId(), TestOrganisations.PASSWORD)))
                .isEmpty();
    }

    private Attempt<People.NewPerson> add(String username) {
        return organisation.in(
                () -> people.addPerson(organisation.programme().id(), "Ottilie Brannock", username, Role.SUPERVISOR));
    }

    private static List<String> keys(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }
}
