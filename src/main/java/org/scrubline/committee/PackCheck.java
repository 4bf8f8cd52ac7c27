package org.scrubline.committee;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.SignedText;
import tools.jackson.databind.JsonNode;

/** Compares frozen evidence with its hash, and its columns with what it says. */
public final class PackCheck implements RecordCheck {

    private static final String TABLE = "evidence_pack";
    private static final Map<String, String> PLACES =
            Map.of("meeting_id", "/meeting", "trainee_id", "/trainee/id", "cut_off", "/cutOff");

    @Override
    public Set<LeafKind> kinds() {
        return Set.of(LeafKind.EVIDENCE_PACK);
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        List<JsonNode> found = rows.getOrDefault(TABLE, List.of());
        return new Look(
                found.size() == 1
                        ? SignedText.of(TABLE, found.get(0)).against(PLACES)
                        : List.of(new Contradiction(TABLE, "id")),
                null);
    }
}
