package org.scrubline.notice;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.notice.DigestDesk.Digest;
import org.scrubline.notice.NoticeStore.Notice;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.MessageSource;
import org.springframework.mail.MailException;
import org.springframework.stereotype.Component;

/** Sends each person at most one mail a day: counts and a link, no name of a trainee, no word of a case. */
@Component
class Digests {

    private static final Logger log = LoggerFactory.getLogger(Digests.class);

    private final DigestDesk desk;
    private final Mail mail;
    private final MessageSource messages;
    private final String origin;

    Digests(DigestDesk desk, Mail mail, MessageSource messages, @Value("${scrubline.web.origin}") String origin) {
        this.desk = desk;
        this.mail = mail;
        this.messages = messages;
        this.origin = origin;
    }

    void send() {
        if (mail.isSet()) {
            desk.readers().forEach(person -> desk.take(person).ifPresent(this::send));
        }
    }

    /** A mail server that is away today is asked again at the next run; nobody else has to wait for it. */
    private void send(Digest digest) {
        try {
            mail.send(digest.address(), say("notice.mail.subject"), text(digest));
        } catch (MailException e) {
            desk.putBack(digest);
            log.warn("A digest could not be sent: {}", e.getClass().getSimpleName());
        }
    }

    private String text(Digest digest) {
        Map<UUID, Stage> latest = digest.notices().stream()
                .collect(Collectors.toMap(
                        Notice::sheetId, Notice::stage, (one, other) -> one.compareTo(other) > 0 ? one : other));
        Map<Stage, Long> counts = latest.values().stream()
                .collect(Collectors.groupingBy(stage -> stage, TreeMap::new, Collectors.counting()));
        String lines = counts.entrySet().stream()
                .map(count -> say("notice.mail." + count.getKey(), count.getValue()))
                .collect(Collectors.joining("\n"));
        return say("notice.mail.text", latest.size(), lines, origin + "/reminders", origin + "/my-notices");
    }

    private String say(String key, Object... arguments) {
        return messages.getMessage(key, arguments, Locale.ENGLISH);
    }
}
