package org.scrubline.notice;

import java.util.Locale;
import java.util.UUID;
import org.scrubline.platform.NewDevice;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.MessageSource;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Tells the owner of an account by mail that it was logged in to from a new kind of device: at once and in quiet hours too,
 * to the address they gave for reminders. It names neither the person nor the place.
 */
@Component
class NewDeviceMail implements QueuedJob {

    private final Reminders reminders;
    private final Mail mail;
    private final JobQueue queue;
    private final MessageSource messages;
    private final String origin;

    NewDeviceMail(
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
        String address = reminders.settings(UUID.fromString(key)).mailAddress();
        if (mail.isSet() && !address.isEmpty()) {
            mail.send(address, say("notice.new-device.subject"), say("notice.new-device.text", origin));
        }
    }

    private String say(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }
}
