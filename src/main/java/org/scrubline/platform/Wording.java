package org.scrubline.platform;

import java.util.List;
import java.util.Locale;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Turns message keys and refusals into the sentences a person reads, in the language of the request. */
@Component
public class Wording {

    private final MessageSource messages;

    public Wording(MessageSource messages) {
        this.messages = messages;
    }

    /** One line of an error summary: the field it leads to and what to do. */
    public record FormError(String field, String message) {}

    public String text(String key, Object... arguments) {
        Locale locale = LocaleContextHolder.getLocale();
        return messages.getMessage(key, arguments, locale);
    }

    /** The same, or another text where there is no such key, as for what another release wrote. */
    public String textOr(String key, String otherwise) {
        String found = messages.getMessage(key, null, otherwise, LocaleContextHolder.getLocale());
        return found == null ? otherwise : found;
    }

    public String text(Refusal refusal) {
        return text(refusal.messageKey(), refusal.arguments().toArray());
    }

    /** Refusals as lines of an error summary, in their order. */
    public List<FormError> errors(List<Refusal> refusals) {
        return refusals.stream()
                .map(refusal -> new FormError(refusal.field(), text(refusal)))
                .toList();
    }
}
