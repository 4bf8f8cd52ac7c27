package org.scrubline.ledger.check;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * A leaf as it was read, nothing of it checked.
 *
 * @param kind name of a {@link org.scrubline.ledger.LeafKind}, or of one this version does not know
 * @param entry the text that was hashed
 * @param hash its stored hash, hexadecimal
 * @param rows JSON of the rows found for the record, by table
 */
record EvidenceLeaf(long index, String kind, UUID record, String entry, String hash, Map<String, List<String>> rows) {}
