package org.scrubline.ledger;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import tools.jackson.databind.JsonNode;

/**
 * A room's own look at the rows of its records: do they agree with each other? It finds what was changed and then fixed
 * anew by someone who could rewrite the whole ledger.
 *
 * <p>Listed in {@code META-INF/services}, because a file is checked where no server runs; so it has a public constructor
 * without parameters, and no state.
 */
public interface RecordCheck {

    /** A column that does not agree with what was signed. */
    record Contradiction(String table, String column) {}

    LeafKind kind();

    /**
     * Looks at one record.
     *
     * @param rows by table, each an object of all columns that have a value; tables without a row are missing
     * @return what does not agree; empty when everything does
     */
    List<Contradiction> check(UUID record, Map<String, List<JsonNode>> rows);
}
