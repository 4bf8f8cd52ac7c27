package org.scrubline.ledger.check;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.rubric.TakeoverReason;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.TestOrganisations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * An organisation with a row in every evidence table. Whoever adds a kind of leaf adds an example here; the attack on
 * every column fails on a table without one.
 */
@Component
public class EvidenceFixture {

    private final SheetFixture sheets;
    private final SigningFixture fixture;
    private final Signing signing;
    private final SignedRecords records;
    private final People people;
    private final EvidenceExamples examples;
    private final Ledger ledger;
    private final Checkpoints checkpoints;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Clock clock;

    EvidenceFixture(
            SheetFixture sheets,
            SigningFixture fixture,
            Signing signing,
            SignedRecords records,
            People people,
            EvidenceExamples examples,
            Ledger ledger,
            Checkpoints checkpoints,
            JdbcClient jdbc,
            TransactionTemplate transaction,
            Clock clock) {
        this.sheets = sheets;
        this.fixture = fixture;
        this.signing = signing;
        this.records = records;
        this.people = people;
        this.examples = examples;
        this.ledger = ledger;
        this.checkpoints = checkpoints;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** The organisation with its two signed sheets. */
    public record Evidence(Theatre theatre, List<SignedSheet> signed) {

        public UUID tenant() {
            return theatre.organisation().tenant();
        }
    }

    /** Every kind of evidence, a checkpoint over all of it, and two records after that. */
    public Evidence of(TestOrganisations organisations) {
        Theatre theatre = sheets.theatre(organisations);
        SignedSheet first = signed(theatre, Duration.ofHours(5));
        theatre.organisation().in(() -> {
            people.declarePriorExperience(theatre.trainee().personId(), "TRAB_FORNIX", 12);
            return records.remark(theatre.trainee(), first.id(), "The punch slipped.")
                    .orThrow();
        });
        handOn(theatre, first);
        populationFit(theatre);
        examples.of(theatre, first, signed(theatre, Duration.ofHours(4)));
        theatre.organisation().in(checkpoints::publish);
        SignedSheet second = signed(theatre, Duration.ofHours(3));
        theatre.organisation().in(checkpoints::publish);
        return new Evidence(theatre, List.of(first, second));
    }

    /** One signed sheet and nothing that covers it. */
    public Evidence withoutCheckpoint(TestOrganisations organisations) {
        Theatre theatre = sheets.theatre(organisations);
        return new Evidence(theatre, List.of(signed(theatre, Duration.ofHours(3))));
    }

    private SignedSheet signed(Theatre theatre, Duration ago) {
        UUID sheet = fixture.complete(theatre, clock.instant().minus(ago));
        fixture.change(
                theatre, sheet, new SheetChange.AddEvent("TAKEOVER", "TF12", TakeoverReason.SAFETY, "Took the punch."));
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
    }

    private void handOn(Theatre theatre, SignedSheet signed) {
        UUID id = UUID.randomUUID();
        fixed(
                theatre,
                LeafKind.HANDED_ON,
                id,
                () -> jdbc.sql("""
                        insert into sheet_assignment (
                            tenant_id, id, sheet_id, from_id, to_id, assigned_by, reason, assigned_at, answered_steps)
                        values (:tenant, :id, :sheet, :person, :person, :person, 'on leave', now(), 3)
                        """)
                        .param("tenant", theatre.organisation().tenant())
                        .param("id", id)
                        .param("sheet", signed.sheetId())
                        .param("person", signed.signerId())
                        .update());
    }

    private void populationFit(Theatre theatre) {
        UUID id = UUID.randomUUID();
        fixed(
                theatre,
                LeafKind.POPULATION_FIT,
                id,
                () -> jdbc.sql("""
                        insert into population_fit (
                            tenant_id, id, programme_id, procedure_code, engine_version, data_until, sheets, own_fit,
                            content, fitted_at)
                        values (:tenant, :id, :programme, 'TRAB_FORNIX', 'test', now(), 2, false, '{}', now())
                        """)
                        .param("tenant", theatre.organisation().tenant())
                        .param("id", id)
                        .param("programme", theatre.organisation().programme().id())
                        .update());
    }

    private void fixed(Theatre theatre, LeafKind kind, UUID id, Runnable insert) {
        theatre.organisation()
                .in(() -> transaction.execute(status -> {
                    insert.run();
                    return ledger.append(kind, id);
                }));
    }
}
