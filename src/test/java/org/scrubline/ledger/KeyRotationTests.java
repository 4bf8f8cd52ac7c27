package org.scrubline.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.ServiceLoader;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.Finding;
import org.scrubline.ledger.check.Known;
import org.scrubline.ledger.check.Problem;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.SignedCheckpoint.Standing;
import org.scrubline.ledger.note.VerifierKey;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.transaction.support.TransactionTemplate;

/** E17: the key file was changed. What the old key signed holds by the old key, what the new one signed by the new. */
@ScrublineTest
class KeyRotationTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheets;

    @Autowired
    SigningFixture fixture;

    @Autowired
    CheckpointDesk before;

    @Autowired
    CheckpointStore store;

    @Autowired
    LedgerStore leaves;

    @Autowired
    Ledger ledger;

    @Autowired
    Clock clock;

    @Autowired
    TransactionTemplate transaction;

    @Value("${scrubline.ledger.origin}")
    String origin;

    @TempDir
    Path folder;

    Theatre theatre;
    CheckpointDesk after;

    @BeforeEach
    void changeTheKey() throws Exception {
        theatre = sheets.theatre(organisations);
        LedgerIdentity fresh =
                new LedgerIdentity(origin, folder.resolve("new.key").toString(), folder, "jdbc:postgresql://elsewhere");
        after = new CheckpointDesk(store, leaves, ledger, fresh, clock);
    }

    @Test
    void checkpointsHoldByTheKeyOfTheirTimeAndTheLedgerKeepsBothKeys() throws Exception {
        sign();
        String old = note(before);
        assertThat(note(before)).as("nothing new, nothing to sign").isEqualTo(old);
        String first = note(after);
        assertThat(first).as("a new key is reason enough").isNotEqualTo(old);
        sign();
        String second = note(after);

        VerifierKey oldKey = VerifierKey.parse(in(before::verifierKey));
        VerifierKey newKey = VerifierKey.parse(in(after::verifierKey));
        assertThat(standing(old, oldKey)).isEqualTo(Standing.SIGNED);
        assertThat(standing(old, newKey)).isEqualTo(Standing.UNKNOWN);
        assertThat(standing(first, newKey)).isEqualTo(Standing.SIGNED);
        assertThat(standing(second, newKey)).isEqualTo(Standing.SIGNED);
        assertThat(standing(second, oldKey)).isEqualTo(Standing.UNKNOWN);
        assertThat(in(store::keys)).containsExactly(oldKey.text(), newKey.text());

        CheckResult result = check(Known.read(List.of(newKey.text()), List.of(old, second)));
        assertThat(result.found()).isEmpty();
        assertThat(result.held()).isEqualTo(2);
        assertThat(result.signedWith()).isEqualTo(newKey.text());
        assertThat(check(Known.read(List.of(oldKey.text()), List.of(old))).found())
                .as("an office that was not given the new key is told")
                .extracting(Finding::problem)
                .containsExactly(Problem.NEWEST_KEY);
    }

    private void sign() {
        fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
    }

    private String note(CheckpointDesk desk) {
        return in(() -> desk.publish().orElseThrow().note());
    }

    private <T> T in(Supplier<T> work) {
        return theatre.organisation().in(() -> transaction.execute(status -> work.get()));
    }

    private static Standing standing(String note, VerifierKey key) {
        return SignedCheckpoint.parse(note).standing(List.of(key));
    }

    private CheckResult check(Known known) throws Exception {
        try (Connection connection = TestDatabase.superuser()) {
            connection.setAutoCommit(false);
            return new DatabaseCheck(connection, theatre.organisation().tenant())
                    .run(known, ServiceLoader.load(RecordCheck.class), leaves -> {});
        }
    }
}
