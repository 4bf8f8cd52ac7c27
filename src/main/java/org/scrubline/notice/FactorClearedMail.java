package org.scrubline.notice;

import java.util.Locale;
import java.util.UUID;
import org.scrubline.people.FactorCleared;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.MessageSource;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Tells the owner of an account by mail that two administrators took its second factor away: at once and in quiet hours too, to
 * the address they gave for reminders. It names nobody.
 */
@Component
class FactorClearedMail implements QueuedJob {

    private final Reminders reminders;
    private final Mail mail;
    private final JobQueue queue;
    private final MessageSource messages;
    private final String origin;

    FactorClearedMail(
            Reminders reminders,
            Mail mail,
            JobQueue queue,
            MessageSource messages,
            @Value("${scrubline.web.origin}") String origin) {
        this.reminders = reminders;
        this.mail = mail;
        this.queue = queue;
        this.messages = messages;
        this.origin = origin;
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
        String address = reminders.settings(UUID.fromString(key)).mailAddress();
        if (mail.isSet() && !address.isEmpty()) {
            mail.send(address, say("notice.factor-cleared.subject"), say("notice.factor-cleared.text", origin));
        }
    }

    private String say(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }
}
