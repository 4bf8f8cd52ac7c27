package org.scrubline.people;

import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;

/** A site has another name, or another last day. */
record SiteChanged(
        String action,
        Site site,
        @Nullable String before,
        @Nullable String after) implements Audited {

    @Override
    public Item item() {
        return new Item("site", site.id(), null, site.code());
    }
}
