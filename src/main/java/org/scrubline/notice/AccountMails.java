package org.scrubline.notice;

import java.util.Locale;
import java.util.UUID;
import org.scrubline.platform.AccountLetters;
import org.scrubline.platform.AccountLetters.Letter;
import org.scrubline.platform.AccountMail;
import org.scrubline.platform.jobs.JobQueue;
import org.scrubline.platform.jobs.QueuedJob;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.MessageSource;
import org.springframework.mail.MailException;
import org.springframework.stereotype.Component;

/**
 * Sends mail about getting into an account, at once and in quiet hours too. Addresses of pages in it begin with the one of
 * the settings, never with what a request called this server. No mail names a person.
 */
@Component
class AccountMails implements AccountMail, QueuedJob {

    private static final Logger log = LoggerFactory.getLogger(AccountMails.class);

    private static final String FORGOTTEN = "forgotten ";
    private static final String CONFIRM = "confirm ";
    private static final String RENEWED = "renewed ";

    private final AccountLetters letters;
    private final Mail mail;
    private final JobQueue queue;
    private final MessageSource messages;
    private final String origin;

    AccountMails(
            AccountLetters letters,
            Mail mail,
            JobQueue queue,
            MessageSource messages,
            @Value("${scrubline.web.origin}") String origin) {
        this.letters = letters;
        this.mail = mail;
        this.queue = queue;
        this.messages = messages;
        this.origin = origin;
    }

    @Override
    public boolean isSet() {
        return mail.isSet();
    }

    @Override
    public void forgotten(String typed) {
        queue.addEverywhere(this, FORGOTTEN + AccountLetters.asked(typed));
    }

    @Override
    public void confirm(UUID account) {
        queue.add(this, CONFIRM + account);
    }

    @Override
    public void renewed(UUID account) {
        if (mail.isSet()) {
            queue.add(this, RENEWED + account);
        }
    }

    @Override
    public String name() {
        return "account-mail";
    }

    @Override
    public void run(String key) {
        if (!mail.isSet()) {
            return;
        }
        String what = key.substring(key.indexOf(' ') + 1);
        if (key.startsWith(FORGOTTEN)) {
            letters.forgotten(what).forEach(this::sendCode);
        } else if (key.startsWith(CONFIRM)) {
            letters.address(UUID.fromString(what)).ifPresent(address -> send(address, "address-asked", origin));
            letters.confirm(UUID.fromString(what)).ifPresent(this::sendConfirmation);
        } else {
            letters.address(UUID.fromString(what)).ifPresent(address -> send(address, "password-renewed", origin));
        }
    }

    private void sendCode(Letter letter) {
        sendOnce(() -> send(letter.address(), "new-password", origin, letter.code(), letter.username()));
    }

    private void sendConfirmation(Letter letter) {
        sendOnce(() -> send(letter.address(), "address-confirm", origin, letter.code()));
    }

    /** A code lives for minutes: one that could not be sent is asked for anew, not sent hours later. */
    private static void sendOnce(Runnable sending) {
        try {
            sending.run();
        } catch (MailException e) {
            log.warn("A code could not be sent: {}", e.getClass().getSimpleName());
        }
    }

    private void send(String address, String kind, Object... arguments) {
        mail.send(
                address,
                say("notice.account." + kind + ".subject"),
                say("notice.account." + kind + ".text", arguments));
    }

    private String say(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }
}
