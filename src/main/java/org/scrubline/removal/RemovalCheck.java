package org.scrubline.removal;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.removal.RemovalIntent.Act;
import tools.jackson.databind.JsonNode;

/** Forms again what the passkeys of a removal were asked to sign. */
public final class RemovalCheck implements RecordCheck {

    @Override
    public Set<LeafKind> kinds() {
        return Set.of(LeafKind.REMOVAL_REQUEST, LeafKind.RECORD_REMOVAL);
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        JsonNode row = rows.getOrDefault(kind.rows().get(0).table(), List.of()).get(0);
        RemovalIntent intent = kind == LeafKind.REMOVAL_REQUEST
                ? RemovalIntent.of(Act.REMOVAL_ASKED, id(row, "trainee_id"))
                : RemovalIntent.of(Act.REMOVAL_CONFIRMED, id(row, "request_id"));
        return new Look(List.of(), new CredentialClaim(intent.hash(), used(row)));
    }

    private static UUID id(JsonNode row, String column) {
        return UUID.fromString(row.path(column).asString(""));
    }

    private static @Nullable CredentialUsed used(JsonNode row) {
        return switch (row.path("credential").asString("")) {
            case "PASSKEY" ->
                new CredentialUsed(
                        CredentialUsed.Kind.PASSKEY, row.path("assertion_hash").asString(""));
            case "PASSWORD" -> new CredentialUsed(CredentialUsed.Kind.PASSWORD, null);
            default -> null;
        };
    }
}
