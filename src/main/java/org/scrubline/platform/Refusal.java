package org.scrubline.platform;

import java.util.List;

/**
 * Why something asked for was not done, in words meant for the person who asked.
 *
 * @param field the form field it concerns, or empty when it concerns the whole request
 * @param messageKey key of the sentence
 * @param arguments values for the sentence
 */
public record Refusal(String field, String messageKey, List<Object> arguments) {

    public Refusal {
        arguments = List.copyOf(arguments);
    }

    /** A reason that concerns the whole request. */
    public static Refusal of(String messageKey, Object... arguments) {
        return new Refusal("", messageKey, List.of(arguments));
    }

    /** A reason tied to one form field. */
    public static Refusal at(String field, String messageKey, Object... arguments) {
        return new Refusal(field, messageKey, List.of(arguments));
    }
}
