package org.scrubline.ledger;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * A room's own look at the rows of its records: do they agree with each other, and which credential do they name? It
 * finds what was changed and then fixed anew by someone who could rewrite the whole ledger.
 *
 * <p>Listed in {@code META-INF/services}, because a file is checked where no server runs; so it has a public constructor
 * without parameters, and no state. Several threads look at once.
 */
public interface RecordCheck {

    /** A column that does not agree with what was signed. */
    record Contradiction(String table, String column) {}

    /**
     * What was seen.
     *
     * @param contradictions empty when everything agrees
     * @param claim what it says of its signer's credential; null when such a record is signed by nobody
     */
    record Look(
            List<Contradiction> contradictions, @Nullable CredentialClaim claim) {
        public Look {
            contradictions = List.copyOf(contradictions);
        }
    }

    /** The kinds of record it knows; no other is given to it. */
    Set<LeafKind> kinds();

    /**
     * Looks at one record.
     *
     * @param rows by table, each an object of all columns that have a value; tables without a row are missing
     */
    Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows);
}
