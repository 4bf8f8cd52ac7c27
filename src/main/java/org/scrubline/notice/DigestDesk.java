package org.scrubline.notice;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.casework.WaitingSheet;
import org.scrubline.casework.WaitingSheets;
import org.scrubline.notice.NoticeStore.Notice;
import org.scrubline.notice.Recipients.Recipient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes what goes into one mail, and puts it back when the mail server would not have it. One transaction each. */
@Service
@Transactional
class DigestDesk {

    private final NoticeStore notices;
    private final NoticeSettingStore settings;
    private final Recipients recipients;
    private final WaitingSheets waiting;
    private final Clock clock;

    DigestDesk(
            NoticeStore notices,
            NoticeSettingStore settings,
            Recipients recipients,
            WaitingSheets waiting,
            Clock clock) {
        this.notices = notices;
        this.settings = settings;
        this.recipients = recipients;
        this.waiting = waiting;
        this.clock = clock;
    }

    /** One mail to send: where to, and about what. */
    record Digest(UUID personId, String address, List<Notice> notices) {}

    @Transactional(readOnly = true)
    public List<UUID> readers() {
        return settings.byMail();
    }

    /** The mail of the day, taken once; empty when it is too early, quiet, sent already or about nothing. */
    public Optional<Digest> take(UUID personId) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Optional<Recipient> due = recipients
                .find(personId, now)
                .filter(recipient -> recipient.settings().mailOn() && !recipient.quiet())
                .filter(recipient ->
                        recipient.now().getHour() >= recipient.settings().digestHour());
        List<Notice> about = due.isEmpty() ? List.of() : stillOpen(personId);
        if (about.isEmpty() || !settings.claim(personId, due.orElseThrow().now().toLocalDate())) {
            return Optional.empty();
        }
        about.forEach(notice -> notices.mark(personId, notice, now));
        return Optional.of(new Digest(personId, due.orElseThrow().settings().mailAddress(), about));
    }

    public void putBack(Digest digest) {
        settings.claim(digest.personId(), null);
        digest.notices().forEach(notice -> notices.mark(digest.personId(), notice, null));
    }

    private List<Notice> stillOpen(UUID personId) {
        Set<UUID> open =
                waiting.ofScorer(personId).stream().map(WaitingSheet::sheetId).collect(Collectors.toSet());
        return notices.unmailed(personId).stream()
                .filter(notice -> open.contains(notice.sheetId()))
                .toList();
    }
}
