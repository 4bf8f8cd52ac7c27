package org.scrubline.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.CaseChanges;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.people.People;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Origin;
import org.scrubline.platform.RecordSeen;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.signoff.SignedRecords;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Signing;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.transaction.IllegalTransactionStateException;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.context.request.RequestContextHolder;

/** Entries are written with the deed, and a deed without its entry does not happen. */
@ScrublineTest
class AuditTrailTests {

    private static final Instant ENDED = Instant.parse("2026-03-02T10:00:00Z");

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    Signing signing;

    @Autowired
    SignedRecords records;

    @Autowired
    CaseChanges changes;

    @Autowired
    People people;

    @Autowired
    AuditLog log;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SignedIn director;

    @BeforeEach
    void openATheatre() {
        // The test framework sets a request aside for the test itself; outside of the pages there is none.
        RequestContextHolder.resetRequestAttributes();
        theatre = sheetFixture.theatre(organisations);
        director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
    }

    @Test
    void signingWritesOneEntryWithEverythingItHasToProve() {
        UUID sheet = fixture.complete(theatre, ENDED);
        Instant signedAt = ENDED.plus(Duration.ofHours(1));

        SignedSheet signed = clock.at(signedAt, () -> sign(sheet));

        AuditEntry entry = only("sheet-signed");
        assertThat(entry.at()).isEqualTo(signedAt);
        assertThat(entry.actor())
                .isEqualTo(new AuditEntry.Named(theatre.supervisor().personId(), "Ansel Verrin"));
        assertThat(entry.about())
                .isEqualTo(new AuditEntry.Named(theatre.trainee().personId(), "Fenna Hallinor"));
        assertThat(entry.item().kind()).isEqualTo("signed-sheet");
        assertThat(entry.item().id()).isEqualTo(signed.id());
        assertThat(entry.item().version()).isEqualTo(1);
        assertThat(entry.item().label()).startsWith("K7-");
        assertThat(entry.after()).isEqualTo("sha256:" + signed.contentHash());
        assertThat(entry.address()).as("no request").isEqualTo(Origin.SYSTEM);
        assertThat(entry.sessionHash()).isNull();
        assertThat(entry.appVersion()).isNotEmpty();
    }

    @Test
    void whatCannotBeWrittenDownIsNotSigned() throws Exception {
        UUID sheet = fixture.complete(theatre, ENDED);
        String tenant = theatre.organisation().tenant().toString();
        asOwner("ALTER TABLE audit_entry ADD CONSTRAINT full_disk CHECK (tenant_id <> '" + tenant + "') NOT VALID");
        try {
            assertThatThrownBy(() -> clock.at(ENDED.plusSeconds(60), () -> sign(sheet)))
                    .hasMessageContaining("full_disk");
        } finally {
            asOwner("ALTER TABLE audit_entry DROP CONSTRAINT full_disk");
        }
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);

        clock.at(ENDED.plusSeconds(60), () -> sign(sheet));

        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.SIGNED);
        only("sheet-signed");
    }

    @Test
    void aDeedRolledBackLeavesNoEntry() {
        theatre.organisation()
                .in(() -> transaction.execute(status -> {
                    people.grant(programme(), theatre.trainee().personId(), Role.SUPERVISOR);
                    status.setRollbackOnly();
                    return true;
                }));
        assertThat(entries("role-given")).isEmpty();

        theatre.organisation().in(() -> {
            people.grant(programme(), theatre.trainee().personId(), Role.SUPERVISOR);
            people.grant(programme(), theatre.trainee().personId(), Role.SUPERVISOR);
            return true;
        });

        assertThat(only("role-given").after()).isEqualTo("SUPERVISOR");
    }

    @Test
    void aDeedOutsideATransactionIsABug() {
        Audited deed = new Audited() {
            @Override
            public String action() {
                return "case-logged";
            }

            @Override
            public Audited.Item item() {
                return new Item("case", null, null, "");
            }
        };
        assertThatThrownBy(() -> theatre.organisation().in(() -> {
                    events.publishEvent(deed);
                    return true;
                }))
                .isInstanceOf(IllegalTransactionStateException.class);
    }

    @Test
    void aReadingIsToldAfterItsTransactionOnly() {
        RecordSeen seen = seen(theatre.trainee().personId());
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> transaction.execute(status -> {
                            events.publishEvent(seen);
                            return true;
                        })))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("after the transaction");
        assertThat(entries("seen-progress")).isEmpty();
    }

    @Test
    void theSameRecordReadAgainWithinTheHourGivesOneEntry() {
        Instant nine = Instant.parse("2026-03-02T09:00:00Z");
        see(nine, theatre.trainee().personId());
        see(nine.plus(59, ChronoUnit.MINUTES), theatre.trainee().personId());
        assertThat(entries("seen-progress")).hasSize(1);

        see(nine.plus(60, ChronoUnit.MINUTES), theatre.trainee().personId());
        see(nine.plus(61, ChronoUnit.MINUTES), theatre.supervisor().personId());
        assertThat(entries("seen-progress")).hasSize(3);
    }

    @Test
    void aRemarkIsWrittenDownByItsHashAlone() {
        SignedSheet signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
        theatre.organisation()
                .in(() -> records.remark(theatre.trainee(), signed.id(), "The punch slipped.")
                        .orThrow());

        // printf 'The punch slipped.' | sha256sum
        assertThat(only("remark-written").after())
                .isEqualTo("sha256:2503620f715f9af4651707e02b4ea0f16c57734c6e315d1f77ff0a9d75879bdf");
    }

    @Test
    void whatBecomesOfACaseIsToldWithItsReason() {
        UUID sheet = fixture.blank(theatre, ENDED);
        UUID caseId = fixture.read(theatre, sheet).caseId();
        theatre.organisation()
                .in(() -> changes.abandon(theatre.trainee(), caseId, "The cornea was cloudy.")
                        .orThrow());

        AuditEntry entry = only("case-abandoned");
        assertThat(entry.reason()).isEqualTo("The cornea was cloudy.");
        assertThat(entry.about())
                .isEqualTo(new AuditEntry.Named(theatre.trainee().personId(), "Fenna Hallinor"));

        theatre.organisation().in(() -> changes.abandon(theatre.trainee(), caseId, "Once more."));
        only("case-abandoned");
    }

    private SignedSheet sign(UUID sheet) {
        return theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet)
                        .orThrow());
    }

    private RecordSeen seen(UUID about) {
        return new RecordSeen(director, about, programme(), new Audited.Item("progress", about, null, ""), null);
    }

    private void see(Instant at, UUID about) {
        clock.at(
                at,
                () -> theatre.organisation().in(() -> {
                    events.publishEvent(seen(about));
                    return true;
                }));
    }

    private UUID programme() {
        return theatre.organisation().programme().id();
    }

    private AuditEntry only(String action) {
        List<AuditEntry> entries = entries(action);
        assertThat(entries).as(action).hasSize(1);
        return entries.get(0);
    }

    private List<AuditEntry> entries(String action) {
        List<AuditEntry> entries = new ArrayList<>();
        theatre.organisation().in(() -> {
            log.allDone(director, programme(), new AuditFilter(null, Set.of(action), null, null), entries::add);
            return true;
        });
        return entries;
    }

    private static void asOwner(String statement) throws Exception {
        try (Connection superuser = TestDatabase.superuser();
                Statement sql = superuser.createStatement()) {
            sql.execute(statement);
        }
    }
}
