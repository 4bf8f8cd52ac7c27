package org.scrubline.audit.web;

import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditSlice;

/** Ways to the neighbouring stretches of a list; null where it ends. */
record Pager(@Nullable String newer, @Nullable String older) {

    /**
     * Made for a slice.
     *
     * @param filter what the addresses repeat, such as {@code &action=logged-in}; empty without a filter
     */
    static Pager of(AuditSlice slice, String path, String filter) {
        return new Pager(
                slice.newer() == null ? null : path + "?newer=" + slice.newer() + filter,
                slice.older() == null ? null : path + "?older=" + slice.older() + filter);
    }

    /** Whether there is anywhere to go. */
    public boolean any() {
        return newer != null || older != null;
    }
}
