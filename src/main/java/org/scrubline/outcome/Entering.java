package org.scrubline.outcome;

import org.jspecify.annotations.Nullable;

/**
 * Something to enter.
 *
 * @param replaces the ordinal of the entry it puts right; null for a new visit. A new baseline and a new word about a
 *     window replace what stands there by themselves
 */
public record Entering(
        OutcomeEntry.Content content,
        OutcomeEntry.Source source,
        @Nullable Integer replaces) {

    public static Entering of(OutcomeEntry.Content content, OutcomeEntry.Source source) {
        return new Entering(content, source, null);
    }
}
