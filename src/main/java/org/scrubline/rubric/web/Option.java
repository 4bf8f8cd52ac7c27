package org.scrubline.rubric.web;

import org.jspecify.annotations.Nullable;

/** Something to choose, as select-field and choices show it. */
record Option(String value, String label, @Nullable String hint) {

    static Option of(String value, String label) {
        return new Option(value, label, null);
    }
}
