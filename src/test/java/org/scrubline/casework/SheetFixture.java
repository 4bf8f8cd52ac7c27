package org.scrubline.casework;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Cases with open sheets, written straight into the tables: the sheet's tests need no more of a case. */
@Component
public class SheetFixture {

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Rubrics rubrics;

    SheetFixture(JdbcClient jdbc, TransactionTemplate transaction, Rubrics rubrics) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.rubrics = rubrics;
    }

    /** A theatre with one supervisor, one trainee and the shipped rubrics. */
    public record Theatre(TestOrganisation organisation, SignedIn supervisor, SignedIn trainee) {}

    public Theatre theatre(TestOrganisations organisations) {
        TestOrganisation organisation = organisations.open();
        SignedIn supervisor = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        SignedIn trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        organisation.in(() -> rubrics.publishLibrary(supervisor.personId()).orThrow());
        return new Theatre(organisation, supervisor, trainee);
    }

    /** Publishes a rubric of the test's own. */
    public UUID publish(Theatre theatre, Rubric rubric) {
        return theatre.organisation()
                .in(() -> rubrics.publish(rubric, theatre.supervisor().personId())
                        .orThrow()
                        .id());
    }

    /** An ended case of the procedure with one open sheet for the theatre's supervisor. */
    public UUID open(Theatre theatre, String procedure, Instant endedAt) {
        return open(theatre, procedure, endedAt, null);
    }

    /** The same, converted to another procedure when one is named. */
    public UUID open(Theatre theatre, String procedure, Instant endedAt, @Nullable String convertedTo) {
        return theatre.organisation().in(() -> {
            PublishedRubric rubric = rubrics.current(procedure);
            return transaction.execute(status -> insert(theatre, rubric.id(), procedure, endedAt, convertedTo));
        });
    }

    private UUID insert(Theatre theatre, UUID rubric, String procedure, Instant endedAt, @Nullable String convertedTo) {
        UUID caseId = UUID.randomUUID();
        UUID sheet = UUID.randomUUID();
        on("""
                insert into surgical_case (
                    tenant_id, id, programme_id, site_id, reference, kind, procedure_code, eye, state,
                    planned_supervision, band, complexity_set_at, complexity_set_late, ended_at, ended_zone,
                    converted_to, logged_by, logged_at)
                values (:tenant, :case, :programme, :site, :reference, 'OPERATION', :procedure, 'LEFT', 'ENDED',
                    'SCRUBBED', 'B', :at, false, :at, 'Europe/London', :converted, :supervisor, :at)
                """, theatre, caseId, endedAt)
                .param("programme", theatre.organisation().programme().id())
                .param("site", theatre.organisation().site().id())
                .param("reference", "K7-" + caseId.toString().substring(0, 6))
                .param("procedure", procedure)
                .param("converted", convertedTo)
                .update();
        on("""
                insert into case_trainee (tenant_id, case_id, trainee_id, claimed_part)
                values (:tenant, :case, :trainee, 'WHOLE_CASE')
                """, theatre, caseId, endedAt).update();
        on("""
                insert into score_sheet (
                    tenant_id, id, case_id, trainee_id, scorer_id, rubric_version_id, state, opened_at, touched_at)
                values (:tenant, :sheet, :case, :trainee, :supervisor, :rubric, 'OPEN', :at, :at)
                """, theatre, caseId, endedAt)
                .param("sheet", sheet)
                .param("rubric", rubric)
                .update();
        return sheet;
    }

    private JdbcClient.StatementSpec on(String sql, Theatre theatre, UUID caseId, Instant at) {
        return jdbc.sql(sql)
                .param("tenant", theatre.organisation().tenant())
                .param("case", caseId)
                .param("trainee", theatre.trainee().personId())
                .param("supervisor", theatre.supervisor().personId())
                .param("at", at.atOffset(ZoneOffset.UTC));
    }
}
