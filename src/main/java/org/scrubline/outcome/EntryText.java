package org.scrubline.outcome;

import java.util.LinkedHashMap;
import java.util.Map;
import org.scrubline.platform.CanonicalJson;

/** An entry as the one text its hash is made of. */
final class EntryText {

    private EntryText() {}

    /** Canonical JSON (RFC 8785) of everything stored but the organisation. */
    static String canonical(OutcomeEntry entry) {
        Map<String, Object> members = new LinkedHashMap<>();
        EntryColumns.of(entry).forEach((column, value) -> {
            if (value != null) {
                members.put(column, value.toString());
            }
        });
        return CanonicalJson.of(members);
    }
}
