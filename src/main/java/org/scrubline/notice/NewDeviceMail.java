package org.scrubline.notice;

import java.util.UUID;
import org.scrubline.platform.NewDevice;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Tells the owner of an account that it was logged in to from a new kind of device. */
@Component
class NewDeviceMail implements QueuedJob {

    private final OwnerMail mail;
    private final JobQueue queue;

    NewDeviceMail(OwnerMail mail, JobQueue queue) {
        this.mail = mail;
        this.queue = queue;
    }

    /** Queued with the log-in, so that a slow mail server keeps nobody waiting at the door. */
    @EventListener
    void seen(NewDevice event) {
        if (mail.isSet()) {
            queue.add(this, event.owner().personId().toString());
        }
    }

    @Override
    public String name() {
        return "new-device-mail";
    }

    @Override
    public void run(String key) {
        mail.send(UUID.fromString(key), "new-device");
    }
}
