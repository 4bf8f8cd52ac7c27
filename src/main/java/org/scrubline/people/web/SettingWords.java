package org.scrubline.people.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.Wording;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says settings in the reader's language. */
@Component
class SettingWords {

    private final Wording wording;

    SettingWords(Wording wording) {
        this.wording = wording;
    }

    String name(SettingKey key) {
        return wording.text("setting.name." + key);
    }

    String about(SettingKey key) {
        return wording.text("setting.about." + key);
    }

    /** A value with its unit. */
    String value(SettingKey key, int value) {
        return wording.text("setting.unit." + key.unit(), value);
    }

    String at(Instant instant, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", LocaleContextHolder.getLocale())
                .format(instant.atZone(zone));
    }
}
