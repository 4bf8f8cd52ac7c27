package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.StepState;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet.SignedStep;
import org.scrubline.support.History;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class SignedStepQueriesTests {

    private static final String STEP = "TF09";

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private History history;

    @Autowired
    private SignedStepQueries queries;

    @Autowired
    private TransactionTemplate transaction;

    private TestOrganisation organisation;
    private SignedIn trainee;
    private SignedIn scorer;
    private UUID record;

    @BeforeEach
    void signARecord() {
        organisation = organisations.open();
        SignedIn director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
        trainee = organisation.join("Ansgar Vey", Role.TRAINEE);
        scorer = organisation.join("Odile Brannock", Role.SUPERVISOR);
        record = sign();
    }

    private UUID sign() {
        return history.signed(organisation, trainee, scorer, Instant.now().minus(Duration.ofDays(3)), Map.of(STEP, 3))
                .id();
    }

    @Test
    void whatWasSignedIsReadOnce() throws Exception {
        Map<UUID, List<SignedStep>> first = read(organisation);
        assertThat(level(first)).isEqualTo(3);

        run("delete from signed_step where tenant_id = '%s'".formatted(organisation.tenant()));

        assertThat(read(organisation)).isEqualTo(first);
    }

    /** Otherwise what is kept would take six times the memory. */
    @Test
    void recordsReadOneByOneShareTheirSteps() {
        SignedStep first = step(read(organisation), record);
        UUID other = sign();
        SignedStep second =
                step(organisation.in(() -> transaction.execute(status -> queries.of(List.of(other)))), other);
        assertThat(second).isSameAs(first);
    }

    /** As in two installations that were joined, or a copy of one. */
    @Test
    void aRecordOfTheSameIdElsewhereIsAnotherOne() throws Exception {
        assertThat(level(read(organisation))).isEqualTo(3);
        TestOrganisation other = organisations.open();

        copy("signed_sheet", other, "");
        copy("signed_step", other, ", 'level', case when t.step_code = '" + STEP + "' then 5 else t.level end");

        assertThat(level(read(other))).isEqualTo(5);
        assertThat(level(read(organisation))).isEqualTo(3);
    }

    @Test
    void nothingIsKeptOfARecordWithoutSteps() throws Exception {
        TestOrganisation other = organisations.open();
        copy("signed_sheet", other, "");
        assertThat(read(other)).isEmpty();

        copy("signed_step", other, "");

        assertThat(level(read(other))).isEqualTo(3);
    }

    private Map<UUID, List<SignedStep>> read(TestOrganisation where) {
        return where.in(() -> transaction.execute(status -> queries.of(List.of(record))));
    }

    private int level(Map<UUID, List<SignedStep>> read) {
        return ((StepState.Scored) step(read, record).state()).level();
    }

    private static SignedStep step(Map<UUID, List<SignedStep>> read, UUID record) {
        return read.get(record).stream()
                .filter(one -> one.stepCode().equals(STEP))
                .findFirst()
                .orElseThrow();
    }

    private void copy(String table, TestOrganisation to, String changed) throws Exception {
        run("""
                insert into %1$s
                select (jsonb_populate_record(t, to_jsonb(t) || jsonb_build_object('tenant_id', '%2$s'%3$s))).*
                from %1$s t
                where t.tenant_id = '%4$s'
                """.formatted(table, to.tenant(), changed, organisation.tenant()));
    }

    private static void run(String sql) throws Exception {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            statement.execute("set session_replication_role = replica");
            assertThat(statement.executeUpdate(sql)).isPositive();
        }
    }
}
