package org.scrubline.platform;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A form as a page shows it: what was typed, and what is wrong with it.
 *
 * @param values typed or stored value by field name
 * @param errors lines of the error summary
 */
public record FormView(Map<String, String> values, List<Wording.FormError> errors) {

    public FormView {
        values = Map.copyOf(values);
        errors = List.copyOf(errors);
    }

    /** A form nothing was typed into. */
    public static FormView empty() {
        return new FormView(Map.of(), List.of());
    }

    public @Nullable String value(String field) {
        return values.get(field);
    }

    /** The first sentence about a field, or null when nothing is wrong with it. */
    public @Nullable String error(String field) {
        return errors.stream()
                .filter(error -> error.field().equals(field))
                .map(Wording.FormError::message)
                .findFirst()
                .orElse(null);
    }
}
