package org.scrubline.audit;

import org.scrubline.platform.Audited;
import org.scrubline.platform.RecordSeen;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Hears everything audited, on the thread and in the transaction of whoever did it. */
@Component
class AuditListener {

    private final AuditWriter writer;

    AuditListener(AuditWriter writer) {
        this.writer = writer;
    }

    @EventListener
    void done(Audited event) {
        if (event instanceof RecordSeen seen) {
            seen(seen);
        } else {
            writer.done(event);
        }
    }

    /** A second connection for the entry while the first waits could empty the pool, so the reading has to be over. */
    private void seen(RecordSeen seen) {
        if (TransactionSynchronizationManager.isActualTransactionActive()) {
            throw new IllegalStateException("say that a record was seen after the transaction that read it");
        }
        writer.seen(seen);
    }
}
