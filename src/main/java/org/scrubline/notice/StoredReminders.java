package org.scrubline.notice;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.casework.WaitingSheet;
import org.scrubline.casework.WaitingSheets;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.MailAddress;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredReminders implements Reminders {

    private static final int LAST_HOUR = 23;

    private final NoticeStore notices;
    private final NoticeSettingStore settings;
    private final WaitingSheets waiting;
    private final Mail mail;

    StoredReminders(NoticeStore notices, NoticeSettingStore settings, WaitingSheets waiting, Mail mail) {
        this.notices = notices;
        this.settings = settings;
        this.waiting = waiting;
        this.mail = mail;
    }

    @Override
    @Transactional(readOnly = true)
    public Map<UUID, Stage> of(UUID personId) {
        Set<UUID> open =
                waiting.ofScorer(personId).stream().map(WaitingSheet::sheetId).collect(Collectors.toSet());
        Map<UUID, Stage> reached = new LinkedHashMap<>();
        if (!open.isEmpty()) {
            notices.of(personId).stream()
                    .filter(notice -> open.contains(notice.sheetId()))
                    .forEach(notice -> reached.merge(
                            notice.sheetId(), notice.stage(), (one, other) -> one.compareTo(other) > 0 ? one : other));
        }
        return reached;
    }

    @Override
    @Transactional(readOnly = true)
    public NoticeSettings settings(UUID personId) {
        return settings.of(personId).orElse(NoticeSettings.DEFAULTS);
    }

    @Override
    public Attempt<NoticeSettings> change(SignedIn who, NoticeSettings wanted) {
        String address = FreeText.tidy(wanted.mailAddress());
        if (wanted.digestHour() < 0 || wanted.digestHour() > LAST_HOUR) {
            return Attempt.refused(Refusal.at("digestHour", "notice.refusal.hour"));
        }
        boolean needed = wanted.mailOn() || !address.isEmpty();
        if (needed && !MailAddress.fits(address)) {
            return Attempt.refused(Refusal.at("mailAddress", "notice.refusal.address"));
        }
        NoticeSettings kept = new NoticeSettings(
                wanted.quietFrom(), wanted.quietUntil(), wanted.digestHour(), wanted.mailOn(), address);
        settings.put(who.personId(), kept);
        return Attempt.done(kept);
    }

    @Override
    public boolean mailIsSet() {
        return mail.isSet();
    }
}
