package org.scrubline.notice;

import java.util.UUID;
import org.scrubline.people.FactorCleared;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Tells the owner of an account that two administrators took its second factor away. */
@Component
class FactorClearedMail implements QueuedJob {

    private final OwnerMail mail;
    private final JobQueue queue;

    FactorClearedMail(OwnerMail mail, JobQueue queue) {
        this.mail = mail;
        this.queue = queue;
    }

    /** Queued with the deed, so that a slow mail server keeps nobody waiting. */
    @EventListener
    void cleared(FactorCleared event) {
        if (event.done() && mail.isSet()) {
            queue.add(this, event.about().toString());
        }
    }

    @Override
    public String name() {
        return "factor-cleared-mail";
    }

    @Override
    public void run(String key) {
        mail.send(UUID.fromString(key), "factor-cleared");
    }
}
