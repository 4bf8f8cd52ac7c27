package org.scrubline.signoff.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The versions of a record, as they stand on its page.
 *
 * @param band what has to be known before reading this version; null for the one that counts
 * @param marks what stands beside the record now, in words
 * @param entries every version, the void last
 * @param waiting that somebody asked for it to be void, in words; null when nobody did
 * @param open that a new version is being written, in words; null when none is
 * @param draft where the reader goes on writing it; null for everyone else
 * @param declined void requests that were declined, in words
 * @param delegates who was named to sign new versions, in words
 * @param contests contests of any version
 * @param next what this reader may do
 */
record VersionsView(
        @Nullable Band band,
        List<String> marks,
        List<Entry> entries,
        @Nullable String waiting,
        @Nullable String open,
        @Nullable Draft draft,
        List<String> declined,
        List<String> delegates,
        List<Link> contests,
        List<Link> next) {

    /** A band over an older or void version; {@code href} leads to the one that counts, null when none does. */
    record Band(String title, String text, @Nullable String href) {}

    /**
     * One version, or the void after them.
     *
     * @param reason why it was made; null for the first
     * @param counts that it counts, in words; null when it does not
     * @param href its own address; null for the one being read
     * @param compare the side by side with the one before; null for the first and a void
     */
    record Entry(
            String title,
            String name,
            String role,
            String at,
            String meaning,
            @Nullable String reason,
            @Nullable String counts,
            @Nullable String href,
            @Nullable Link compare) {}

    /** The reader's own draft. */
    record Draft(String href, String drop) {}

    /** Something to open. */
    record Link(String href, String label) {}
}
