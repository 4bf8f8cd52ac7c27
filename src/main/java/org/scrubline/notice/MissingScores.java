package org.scrubline.notice;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.WaitingSheet;
import org.scrubline.casework.WaitingSheets;
import org.scrubline.notice.NoticeStore.Notice;
import org.scrubline.notice.Recipients.Recipient;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Makes the notices that are due. Run again it makes none twice; what falls into quiet hours waits for their end. */
@Service
@Transactional
class MissingScores {

    private final WaitingSheets waiting;
    private final Settings settings;
    private final Recipients recipients;
    private final NoticeStore notices;
    private final Clock clock;

    MissingScores(WaitingSheets waiting, Settings settings, Recipients recipients, NoticeStore notices, Clock clock) {
        this.waiting = waiting;
        this.settings = settings;
        this.recipients = recipients;
        this.notices = notices;
        this.clock = clock;
    }

    /** Of several stages reached since the last run only the last one makes a notice. */
    public void remind() {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Map<UUID, ProgrammeSettings> rules = new HashMap<>();
        Map<UUID, Optional<Recipient>> known = new HashMap<>();
        List<WaitingSheet> missing = waiting.endedBefore(now);
        for (WaitingSheet sheet : missing) {
            ProgrammeSettings rule = rules.computeIfAbsent(sheet.programmeId(), settings::of);
            Duration age = Duration.between(sheet.caseEndedAt(), now);
            Optional<Stage> stage = Stage.at(age, rule);
            if (stage.isPresent() && reachable(known, sheet.scorerId(), now)) {
                notices.insert(new Notice(sheet.sheetId(), stage.get()), sheet.scorerId(), now);
            }
        }
    }

    private boolean reachable(Map<UUID, Optional<Recipient>> known, UUID person, Instant now) {
        return known.computeIfAbsent(person, id -> recipients.find(id, now))
                .filter(recipient -> !recipient.quiet())
                .isPresent();
    }
}
