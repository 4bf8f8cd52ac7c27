package org.scrubline.committee.web;

import org.jspecify.annotations.Nullable;

/** Something to open; {@code note} says why and {@code figure} is a short number, both may be null. */
record Link(
        String href,
        String label,
        @Nullable String note,
        @Nullable String figure) {

    static Link of(String href, String label) {
        return new Link(href, label, null, null);
    }
}
