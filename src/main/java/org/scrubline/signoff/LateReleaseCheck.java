package org.scrubline.signoff;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.platform.CredentialUsed;
import tools.jackson.databind.JsonNode;

/** Forms again what the passkey of a late release was asked to sign. Its row is all there is, so nothing can disagree. */
public final class LateReleaseCheck implements RecordCheck {

    @Override
    public Set<LeafKind> kinds() {
        return Set.of(LeafKind.LATE_RELEASE);
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        JsonNode row = rows.getOrDefault("late_release", List.of()).get(0);
        String hash = LateRelease.intent(
                        UUID.fromString(row.path("sheet_id").asString("")),
                        row.path("reason").asString(""))
                .hash();
        return new Look(List.of(), new CredentialClaim(hash, used(row)));
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
