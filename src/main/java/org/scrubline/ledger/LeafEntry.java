package org.scrubline.ledger;

import java.time.Instant;
import java.util.SortedMap;
import java.util.UUID;
import org.scrubline.platform.CanonicalJson;

/**
 * What is hashed as a leaf, as canonical JSON (RFC 8785).
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param at when it was appended
 * @param rows hash of the record's rows by table, see {@link RecordRows#hashes}
 */
record LeafEntry(String schema, UUID tenant, LeafKind kind, UUID record, Instant at, SortedMap<String, String> rows) {

    static final String SCHEMA = "scrubline-leaf/1";

    String json() {
        return CanonicalJson.of(this);
    }

    static LeafEntry read(String json) {
        return CanonicalJson.read(json, LeafEntry.class);
    }
}
