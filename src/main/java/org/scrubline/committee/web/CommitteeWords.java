package org.scrubline.committee.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Wording;
import org.scrubline.platform.Wording.FormError;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says the committee's values in the reader's language. */
@Component
class CommitteeWords {

    private static final double PERCENT = 100;

    private final Wording wording;

    CommitteeWords(Wording wording) {
        this.wording = wording;
    }

    String say(String key, Object... arguments) {
        return wording.text(key, arguments);
    }

    String at(Instant instant, ZoneId zone) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", locale()).format(instant.atZone(zone));
    }

    String day(Instant instant, ZoneId zone) {
        return day(LocalDate.ofInstant(instant, zone));
    }

    String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMM uuuu", locale()).format(day);
    }

    /** Whole percent of a share. */
    static String percent(double share) {
        return Long.toString(Math.round(share * PERCENT));
    }

    static List<String> paragraphs(String text) {
        return Stream.of(text.split("\n+")).filter(one -> !one.isEmpty()).toList();
    }

    /** What concerns the form as a whole leads to its beginning, what concerns the credential to the password. */
    List<FormError> errors(List<Refusal> reasons) {
        return reasons.stream()
                .map(reason -> new FormError(element(reason.field()), wording.text(reason)))
                .toList();
    }

    private static String element(String field) {
        if (field.isEmpty()) {
            return "form";
        }
        return field.equals("passkey") ? "password" : field;
    }

    private static Locale locale() {
        return LocaleContextHolder.getLocale();
    }
}
