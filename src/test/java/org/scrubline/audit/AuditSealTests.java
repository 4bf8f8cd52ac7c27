package org.scrubline.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.Known;
import org.scrubline.platform.Audited;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** The audit trail under its seals, while others are writing it. */
@ScrublineTest
class AuditSealTests {

    private static final int WRITERS = 8;
    private static final int EACH = 40;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SealAuditJob job;

    @Autowired
    AuditSealer sealer;

    @Autowired
    AuditWriter writer;

    @Autowired
    Checkpoints checkpoints;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisation organisation;
    SignedIn trainee;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
    }

    @Test
    void aCheckpointSealsWhatWasWrittenBeforeItAndNothingNewMakesNoSecondSeal() throws Exception {
        write();
        assertThat(check().unsealed()).isEqualTo(entries());
        organisation.in(checkpoints::publish);
        assertThat(check().unsealed()).isZero();
        run();
        assertThat(seals()).isEqualTo(1);
        write();
        assertThat(check().unsealed()).isEqualTo(1);
        run();
        assertThat(seals()).isEqualTo(2);
        assertThat(check().sound()).isTrue();
    }

    @Test
    void aNumberDrawnButNotCommittedIsNeverSealedOver() throws Exception {
        CountDownLatch written = new CountDownLatch(1);
        CountDownLatch sealed = new CountDownLatch(1);
        ExecutorService thread = Executors.newSingleThreadExecutor();
        try {
            Future<?> slow = thread.submit(() -> organisation.in(() -> transaction.execute(status -> {
                insert();
                written.countDown();
                return await(sealed);
            })));
            assertThat(written.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(organisation.in(sealer::settled))
                    .as("somebody is writing")
                    .isEmpty();
            sealed.countDown();
            slow.get(10, TimeUnit.SECONDS);
        } finally {
            thread.shutdownNow();
        }
        run();
        assertThat(check().unsealed()).isZero();
        assertThat(check().sound()).isTrue();
    }

    @Test
    void withWritersAndSealersRacingEverySealHoldsInTheEnd() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(WRITERS + 2);
        AtomicBoolean writing = new AtomicBoolean(true);
        try {
            List<Future<?>> writers = new ArrayList<>();
            for (int i = 0; i < WRITERS; i++) {
                writers.add(threads.submit(() -> {
                    for (int n = 0; n < EACH; n++) {
                        organisation.in(() -> transaction.execute(status -> {
                            insert();
                            insert();
                            return true;
                        }));
                    }
                }));
            }
            List<Future<?>> sealers =
                    List.of(threads.submit(() -> sealWhile(writing)), threads.submit(() -> sealWhile(writing)));
            for (Future<?> one : writers) {
                one.get(60, TimeUnit.SECONDS);
            }
            writing.set(false);
            for (Future<?> one : sealers) {
                one.get(60, TimeUnit.SECONDS);
            }
        } finally {
            threads.shutdownNow();
        }
        run();
        CheckResult result = check();
        assertThat(result.found()).isEmpty();
        assertThat(result.unsealed()).isZero();
        assertThat(entries()).isGreaterThanOrEqualTo(2L * WRITERS * EACH);
        assertThat(number("select sum(entries) from audit_seal")).isEqualTo(entries());
    }

    private void sealWhile(AtomicBoolean writing) {
        while (writing.get()) {
            run();
        }
    }

    private static boolean await(CountDownLatch latch) {
        try {
            return latch.await(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private void run() {
        organisation.in(() -> {
            job.run();
            return true;
        });
    }

    private void write() {
        organisation.in(() -> transaction.execute(status -> {
            insert();
            return true;
        }));
    }

    private void insert() {
        writer.done(new Done(trainee.personId()));
    }

    private CheckResult check() throws Exception {
        try (Connection connection = TestDatabase.superuser()) {
            connection.setAutoCommit(false);
            return new DatabaseCheck(connection, organisation.tenant())
                    .run(Known.NOTHING, ServiceLoader.load(RecordCheck.class), leaves -> {});
        }
    }

    private record Done(UUID about) implements Audited {
        @Override
        public String action() {
            return "test-done";
        }

        @Override
        public Item item() {
            return new Item("test", null, null, "");
        }
    }

    private long seals() {
        return number("select count(*) from audit_seal");
    }

    private long entries() {
        return number("select count(*) from audit_entry");
    }

    private long number(String sql) {
        return organisation.in(() ->
                transaction.execute(status -> jdbc.sql(sql).query(Long.class).single()));
    }
}
