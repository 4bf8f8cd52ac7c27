package org.scrubline.casework.web;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.PatientIdentity;
import org.scrubline.platform.Refusal;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says the sheet's values in words of the reader's language. */
@Component
class SheetWords {

    private static final Duration HOURS_UP_TO = Duration.ofDays(2);

    private static final Pattern TITLE = Pattern.compile("^(?:Dr|Prof)\\.?\\s+");
    private static final Pattern SPACE = Pattern.compile("\\s+");

    private final MessageSource messages;

    SheetWords(MessageSource messages) {
        this.messages = messages;
    }

    String say(String key, @Nullable Object... arguments) {
        return messages.getMessage(key, arguments, locale());
    }

    /** A draft in which the trainee is named by the case. */
    Draft nameless(Draft draft) {
        return draft.called(say("sheet.table.trainee", draft.surgicalCase().reference()));
    }

    /** The words of a key with the places for its arguments still open. */
    String pattern(String key) {
        return messages.getMessage(key, null, locale());
    }

    String say(Refusal refusal) {
        return messages.getMessage(refusal.messageKey(), refusal.arguments().toArray(), locale());
    }

    /** Initial and surname, as people are named in theatre. */
    String shortName(String printedName) {
        List<String> parts = SPACE.splitAsStream(
                        TITLE.matcher(printedName.strip()).replaceFirst(""))
                .toList();
        String surname = parts.get(parts.size() - 1);
        return parts.size() == 1 ? surname : parts.get(0).substring(0, 1) + ". " + surname;
    }

    /** The end of the case on the site's clock, with its zone; empty while it has not ended. */
    String endOf(SurgicalCase surgicalCase) {
        ZoneId zone = surgicalCase.endedZone();
        return surgicalCase.endedAt() == null
                ? ""
                : DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", locale())
                        .format(surgicalCase.endedAt().atZone(zone == null ? ZoneOffset.UTC : zone));
    }

    /** A day on the site's calendar. */
    String day(Instant at, SurgicalCase surgicalCase) {
        ZoneId zone = surgicalCase.endedZone();
        return DateTimeFormatter.ofPattern("d MMM uuuu", locale())
                .format(at.atZone(zone == null ? ZoneOffset.UTC : zone));
    }

    /** A length of time in whole hours up to two days, beyond in whole days; both rounded down. */
    String length(Duration time) {
        return time.compareTo(HOURS_UP_TO) < 0
                ? say("to-score.hours", time.toHours())
                : say("to-score.days", time.toDays());
    }

    String age(Duration age) {
        return age.compareTo(HOURS_UP_TO) < 0
                ? say("to-score.age.hours", age.toHours())
                : say("to-score.age.days", age.toDays());
    }

    /** What to look at again in texts that were kept and may name a patient; each kind once. */
    List<String> identityWarnings(List<String> texts) {
        return texts.stream()
                .flatMap(text -> PatientIdentity.hints(text).stream())
                .distinct()
                .map(hint -> say("identity." + hint.kind()))
                .toList();
    }

    private static Locale locale() {
        return LocaleContextHolder.getLocale();
    }
}
