package org.scrubline.signoff.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Refusal;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says values in the reader's language. */
@Component
class RecordWords {

    private final MessageSource messages;

    RecordWords(MessageSource messages) {
        this.messages = messages;
    }

    String say(String key, @Nullable Object... arguments) {
        return messages.getMessage(key, arguments, locale());
    }

    String say(Refusal refusal) {
        return messages.getMessage(refusal.messageKey(), refusal.arguments().toArray(), locale());
    }

    /** Minute on the clocks of the place, with their zone; a dash for what has not happened. */
    String at(@Nullable Instant instant, @Nullable ZoneId zone) {
        return instant == null
                ? "–"
                : DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", locale())
                        .format(instant.atZone(zone == null ? ZoneOffset.UTC : zone));
    }

    /** Day on the clocks of the place. */
    String day(Instant instant, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu", locale()).format(instant.atZone(zone));
    }

    private static Locale locale() {
        return LocaleContextHolder.getLocale();
    }
}
