package org.scrubline.committee;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.SignedText;
import tools.jackson.databind.JsonNode;

/** Compares the columns of a statement, and the panel it names, with its signed text. */
public final class ActCheck implements RecordCheck {

    private static final String TABLE = "committee_act";
    private static final String PANEL = "appeal_panel";
    private static final Map<String, String> PLACES = Map.ofEntries(
            Map.entry("programme_id", "/programme/id"),
            Map.entry("trainee_id", "/trainee/id"),
            Map.entry("decision_id", "/decision/id"),
            Map.entry("kind", "/kind"),
            Map.entry("signer_id", "/signer/id"),
            Map.entry("signer_name", "/signer/name"),
            Map.entry("signer_role", "/signer/role"),
            Map.entry("meaning", "/signer/meaningKey"),
            Map.entry("signed_at", "/signedAt"),
            Map.entry("signed_zone", "/signedZone"));

    @Override
    public Set<LeafKind> kinds() {
        return Set.of(LeafKind.COMMITTEE_ACT);
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        List<JsonNode> found = rows.getOrDefault(TABLE, List.of());
        if (found.size() != 1) {
            return new Look(List.of(new Contradiction(TABLE, "id")), null);
        }
        SignedText signed = SignedText.of(TABLE, found.get(0));
        List<Contradiction> wrong = new ArrayList<>(signed.against(PLACES));
        if (wrong.isEmpty() && !said(signed).equals(named(rows.getOrDefault(PANEL, List.of())))) {
            wrong.add(new Contradiction(PANEL, "person_id"));
        }
        return new Look(wrong, CredentialClaim.said("", signed.content()));
    }

    private static Set<String> said(SignedText signed) {
        Set<String> persons = new TreeSet<>();
        signed.content()
                .path("persons")
                .forEach(person -> persons.add(person.path("id").asString("")));
        return persons;
    }

    private static Set<String> named(List<JsonNode> rows) {
        Set<String> persons = new TreeSet<>();
        rows.forEach(row -> persons.add(row.path("person_id").asString("")));
        return persons;
    }
}
