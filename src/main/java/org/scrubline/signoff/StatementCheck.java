package org.scrubline.signoff;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.SignedText;
import tools.jackson.databind.JsonNode;

/**
 * Compares the columns of everything signed about a record with the signed text beside them and that text with its hash,
 * and forms again what a passkey was asked to sign.
 */
public final class StatementCheck implements RecordCheck {

    private static final Map<String, String> SIGNER = Map.of(
            "signer_id", "/signer/id",
            "signer_name", "/signer/name",
            "signer_role", "/signer/role",
            "meaning", "/signer/meaningKey",
            "signed_at", "/signedAt",
            "signed_zone", "/signedZone");
    private static final Map<String, String> ABOUT =
            with(Map.of("sheet_id", "/sheet", "signed_sheet_id", "/record/id"));
    private static final Map<String, String> VERSION = with(Map.of(
            "signed_sheet_id",
            "/record/id",
            "record_hash",
            "/record/contentHash",
            "event",
            "/event",
            "words",
            "/words"));

    /** Where the signed text says what a column repeats. */
    private static final Map<LeafKind, Map<String, String>> PLACES = new EnumMap<>(Map.of(
            LeafKind.COUNTERSIGNATURE,
            VERSION,
            LeafKind.ACKNOWLEDGEMENT,
            VERSION,
            LeafKind.VERSION_DELEGATE,
            and(ABOUT, "delegate_id", "/person/id"),
            LeafKind.VOID_REQUEST,
            and(ABOUT, "ground", "/ground"),
            LeafKind.VOID_DECISION,
            with(Map.of("sheet_id", "/sheet", "request_id", "/answers/id")),
            LeafKind.CONTEST,
            ABOUT,
            LeafKind.CONTEST_STEP,
            with(Map.of("kind", "/kind"))));

    private static Map<String, String> with(Map<String, String> more) {
        Map<String, String> all = new TreeMap<>(SIGNER);
        all.putAll(more);
        return all;
    }

    private static Map<String, String> and(Map<String, String> places, String column, String place) {
        Map<String, String> all = new TreeMap<>(places);
        all.put(column, place);
        return all;
    }

    @Override
    public Set<LeafKind> kinds() {
        return PLACES.keySet();
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        String table = kind.rows().get(0).table();
        JsonNode row = rows.getOrDefault(table, List.of()).get(0);
        SignedText signed = SignedText.of(table, row);
        return new Look(
                signed.against(PLACES.getOrDefault(kind, SIGNER)),
                CredentialClaim.said(intended(kind, signed.text()), signed.content()));
    }

    /** Empty for text of another form: no signature can stand for that. */
    private static String intended(LeafKind kind, String text) {
        boolean aboutVersion = kind == LeafKind.COUNTERSIGNATURE || kind == LeafKind.ACKNOWLEDGEMENT;
        try {
            Intent intent = aboutVersion
                    ? Intent.of(VersionSignatureContent.read(text))
                    : Intent.of(StatementContent.read(text));
            return intent.hash();
        } catch (RuntimeException anotherForm) {
            return "";
        }
    }
}
