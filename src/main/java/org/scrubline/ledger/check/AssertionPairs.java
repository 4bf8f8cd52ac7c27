package org.scrubline.ledger.check;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.CredentialCheck;
import org.scrubline.ledger.CredentialCheck.Fault;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.platform.Assertion;
import tools.jackson.databind.JsonNode;

/**
 * Brings each passkey signature together with the record it stands under. The record's leaf comes first and the
 * signature's right behind it, so only what is waiting for its other half is held.
 */
final class AssertionPairs {

    static final String TABLE = LeafKind.ASSERTION.rows().get(0).table();

    private final Findings findings;
    private final Map<Under, CredentialClaim> waiting = new LinkedHashMap<>();

    AssertionPairs(Findings findings) {
        this.findings = findings;
    }

    private record Under(String kind, UUID record) {}

    /** A record that names the credential it was signed with. */
    void claimed(LeafKind kind, UUID record, CredentialClaim claim) {
        if (claim.namesPasskey()) {
            waiting.put(new Under(kind.name(), record), claim);
        }
    }

    /** A leaf about an assertion. */
    void kept(PreparedLeaf leaf) {
        if (leaf.rows() == null || leaf.rows().rows(TABLE).size() != 1) {
            return;
        }
        JsonNode row = leaf.rows().rows(TABLE).get(0).columns();
        Optional<Under> under = under(row);
        CredentialClaim claim = under.map(waiting::remove).orElse(null);
        fault(claim, read(row), leaf.assertionStands())
                .ifPresent(fault -> report(
                        fault,
                        row.path("record_kind").asString(""),
                        row.path("record_id").asString("")));
    }

    private static Optional<Fault> fault(
            @Nullable CredentialClaim claim, Optional<Assertion> assertion, boolean stands) {
        if (claim == null) {
            return Optional.of(Fault.UNNAMED);
        }
        if (assertion.isEmpty()) {
            return Optional.of(Fault.INVALID);
        }
        return CredentialCheck.misplaced(claim, assertion.get())
                .or(() -> stands ? Optional.empty() : Optional.of(Fault.INVALID));
    }

    /** Every record that waits in vain. */
    void finish() {
        waiting.forEach((under, claim) ->
                report(Fault.MISSING, under.kind(), under.record().toString()));
    }

    private void report(Fault fault, String kind, String record) {
        Problem problem = switch (fault) {
            case MISSING -> Problem.ASSERTION_MISSING;
            case UNNAMED -> Problem.ASSERTION_UNNAMED;
            case EXCHANGED -> Problem.ASSERTION_EXCHANGED;
            case INVALID -> Problem.ASSERTION_INVALID;
        };
        findings.add(problem, kind, record);
    }

    private static Optional<Under> under(JsonNode row) {
        try {
            return Optional.of(new Under(
                    row.path("record_kind").asString(""),
                    UUID.fromString(row.path("record_id").asString(""))));
        } catch (IllegalArgumentException noId) {
            return Optional.empty();
        }
    }

    /** The assertion a row holds; empty when it holds none. */
    static Optional<Assertion> read(JsonNode row) {
        try {
            return Optional.of(new Assertion(
                    row.required("challenge").asString(),
                    row.required("credential_id").asString(),
                    row.required("public_key").asString(),
                    row.required("algorithm").asLong(),
                    row.required("authenticator_data").asString(),
                    row.required("client_data").asString(),
                    row.required("signature").asString(),
                    row.required("rp_id").asString(),
                    row.required("origin").asString()));
        } catch (RuntimeException anotherForm) {
            return Optional.empty();
        }
    }
}
