package org.scrubline.committee.web;

import org.jspecify.annotations.Nullable;

/** A plain fact under a heading: a value set in ink, a text set softly; either may be null. */
record Fact(@Nullable String value, @Nullable String text) {}
