package org.scrubline.ledger.leaf;

import java.time.Instant;
import java.util.SortedMap;
import java.util.UUID;
import org.scrubline.platform.CanonicalJson;

/**
 * What is hashed as a leaf, as canonical JSON (RFC 8785).
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param kind name of a {@link org.scrubline.ledger.LeafKind}; text, so that an entry of a later version can be read
 * @param at when it was appended
 * @param rows hash of the record's rows by table, see {@link RecordRows#hashes}
 */
public record LeafEntry(
        String schema, UUID tenant, String kind, UUID record, Instant at, SortedMap<String, String> rows) {

    public static final String SCHEMA = "scrubline-leaf/1";

    public String json() {
        return CanonicalJson.of(this);
    }

    /** Reads an entry; throws some {@link RuntimeException} when the text is none. */
    public static LeafEntry read(String json) {
        return CanonicalJson.read(json, LeafEntry.class);
    }
}
