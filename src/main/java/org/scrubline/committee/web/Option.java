package org.scrubline.committee.web;

import org.jspecify.annotations.Nullable;

/** One of a list to choose from; {@code hint} may be null. */
record Option(String value, String label, @Nullable String hint) {

    static Option of(Object value, String label) {
        return new Option(value.toString(), label, null);
    }
}
