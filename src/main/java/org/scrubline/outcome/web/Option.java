package org.scrubline.outcome.web;

import org.jspecify.annotations.Nullable;

/** One entry of a select field or one choice of a question. */
record Option(String value, String label, @Nullable String hint) {

    static Option of(Object value, String label) {
        return new Option(value.toString(), label, null);
    }
}
