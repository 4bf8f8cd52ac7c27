package org.scrubline.platform.jobs;

import java.util.UUID;
import org.scrubline.platform.TenantScope;

/** The key of a queued job with the organisation that asked, written as one text. */
record OwnedKey(UUID organisation, String key) {

    private static final char BETWEEN = ' ';

    static OwnedKey here(String key) {
        return new OwnedKey(TenantScope.require(), key);
    }

    static OwnedKey parse(String instance) {
        int between = instance.indexOf(BETWEEN);
        return new OwnedKey(UUID.fromString(instance.substring(0, between)), instance.substring(between + 1));
    }

    String instance() {
        return organisation.toString() + BETWEEN + key;
    }
}
