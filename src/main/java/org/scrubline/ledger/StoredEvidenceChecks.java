package org.scrubline.ledger;

import java.io.IOException;
import java.io.Writer;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

/** Queues a check and makes it, over a fresh checkpoint: the job's key is the check it is about. */
@Service
class StoredEvidenceChecks implements EvidenceChecks, QueuedJob {

    /** Leaves between two notes of how far it is. */
    private static final long STEP = 2_000;

    private final EvidenceCheckStore store;
    private final LedgerStore leaves;
    private final Checkpoints checkpoints;
    private final EvidenceReader reader;
    private final JobQueue queue;
    private final TransactionTemplate transaction;
    private final Clock clock;

    StoredEvidenceChecks(
            EvidenceCheckStore store,
            LedgerStore leaves,
            Checkpoints checkpoints,
            EvidenceReader reader,
            JobQueue queue,
            TransactionTemplate transaction,
            Clock clock) {
        this.store = store;
        this.leaves = leaves;
        this.checkpoints = checkpoints;
        this.reader = reader;
        this.queue = queue;
        this.transaction = transaction;
        this.clock = clock;
    }

    @Override
    @Transactional
    public void ask(UUID person) {
        leaves.lock();
        boolean open = store.newest().filter(asked -> asked.result() == null).isPresent();
        if (!open) {
            UUID id = UUID.randomUUID();
            store.add(id, person, clock.instant(), leaves.size());
            queue.add(this, id.toString());
        }
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<AskedCheck> newest() {
        return store.newest();
    }

    @Override
    public void export(Writer out) throws IOException {
        reader.export(out);
    }

    @Override
    public String name() {
        return "evidence-check";
    }

    @Override
    public void run(String key) {
        UUID id = UUID.fromString(key);
        checkpoints.publish();
        long[] next = {STEP};
        CheckResult result = reader.check(done -> {
            if (done >= next[0]) {
                transaction.executeWithoutResult(status -> store.progress(id, done));
                next[0] = done + STEP;
            }
        });
        transaction.executeWithoutResult(status -> store.finish(id, clock.instant(), result));
    }
}
