package org.scrubline.notice;

import java.util.Locale;
import java.util.UUID;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * Tells the owner of an account by mail what became of it: at once and in quiet hours too, to the address they gave for
 * reminders. It names nobody.
 */
@Component
class OwnerMail {

    private final Reminders reminders;
    private final Mail mail;
    private final MessageSource messages;
    private final String origin;

    OwnerMail(Reminders reminders, Mail mail, MessageSource messages, @Value("${scrubline.web.origin}") String origin) {
        this.reminders = reminders;
        this.mail = mail;
        this.messages = messages;
        this.origin = origin;
    }

    boolean isSet() {
        return mail.isSet();
    }

    /** Sends {@code notice.<kind>} to the person, if there is a mail server and an address. */
    void send(UUID person, String kind) {
        String address = reminders.settings(person).mailAddress();
        if (mail.isSet() && !address.isEmpty()) {
            mail.send(address, say("notice." + kind + ".subject"), say("notice." + kind + ".text", origin));
        }
    }

    private String say(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }
}
