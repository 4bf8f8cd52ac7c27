package org.scrubline.platform.web;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;
import org.springframework.context.i18n.LocaleContextHolder;

/** Times on the pages of an account, which belongs to no place: in UTC. */
final class AccountTimes {

    private AccountTimes() {}

    static String at(Instant instant) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm 'UTC'", LocaleContextHolder.getLocale())
                .format(instant.atOffset(ZoneOffset.UTC));
    }

    /** Null for what never was. */
    static @Nullable String atOrNever(@Nullable Instant instant) {
        return instant == null ? null : at(instant);
    }
}
