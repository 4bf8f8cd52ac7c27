package org.scrubline.casework.web;

import org.jspecify.annotations.Nullable;

/** A line of a list of things to open; {@code note} and {@code figure} may be null. */
record Link(
        String href,
        String label,
        @Nullable String note,
        @Nullable String figure) {}
