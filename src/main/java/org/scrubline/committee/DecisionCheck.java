package org.scrubline.committee;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.SignedText;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.JsonNode;

/** Compares the columns of a decision with its signed text, and the part the chair read with the hash that was signed. */
public final class DecisionCheck implements RecordCheck {

    private static final String TABLE = "committee_decision";
    private static final String DECIDED = "\"decided\":";
    private static final String BEHIND = ",\"decidedHash\":";

    private static final Map<String, String> PLACES = Map.ofEntries(
            Map.entry("programme_id", "/decided/programme/id"),
            Map.entry("meeting_id", "/decided/meeting"),
            Map.entry("pack_id", "/decided/pack/id"),
            Map.entry("trainee_id", "/decided/trainee/id"),
            Map.entry("family", "/decided/family"),
            Map.entry("bands", "/decided/bands"),
            Map.entry("level", "/decided/level"),
            Map.entry("review_on", "/decided/reviewOn"),
            Map.entry("signer_id", "/decided/signer/id"),
            Map.entry("signer_name", "/decided/signer/name"),
            Map.entry("signer_role", "/decided/signer/role"),
            Map.entry("meaning", "/decided/signer/meaningKey"),
            Map.entry("signed_at", "/signedAt"),
            Map.entry("signed_zone", "/signedZone"));

    @Override
    public Set<LeafKind> kinds() {
        return Set.of(LeafKind.DECISION);
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        List<JsonNode> found = rows.getOrDefault(TABLE, List.of());
        if (found.size() != 1) {
            return new Look(List.of(new Contradiction(TABLE, "id")), null);
        }
        SignedText signed = SignedText.of(TABLE, found.get(0));
        List<Contradiction> wrong = new ArrayList<>(signed.against(PLACES));
        if (wrong.isEmpty() && !decidedHash(signed)) {
            wrong.add(new Contradiction(TABLE, "content"));
        }
        String decided = signed.content().path("decidedHash").asString("");
        return new Look(wrong, CredentialClaim.said(decided, signed.content()));
    }

    /**
     * The decided part stands in the canonical text byte for byte, between the members before and behind it; free text
     * cannot look like the member behind it, because its quotation marks are escaped.
     */
    private static boolean decidedHash(SignedText signed) {
        int from = signed.text().indexOf(DECIDED) + DECIDED.length();
        int to = signed.text().lastIndexOf(BEHIND);
        return from < to
                && CanonicalJson.sha256(signed.text().substring(from, to))
                        .equals(signed.content().path("decidedHash").asString(""));
    }
}
