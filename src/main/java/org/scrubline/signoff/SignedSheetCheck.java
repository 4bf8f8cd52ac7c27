package org.scrubline.signoff;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.SignedText;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.JsonNode;

/**
 * Compares the columns of a signed sheet, its steps and its events with the signed text beside them, and that text with
 * its hash. Reads the text as a tree, so that content of another version of its form is compared as far as it goes.
 */
public final class SignedSheetCheck implements RecordCheck {

    private static final String SHEET = "signed_sheet";
    private static final String STEP = "signed_step";
    private static final String EVENT = "signed_event";

    private static final String REVIEWED = "\"reviewed\":";
    private static final String BEHIND = ",\"reviewedHash\":";

    /** Where the signed text says what a column of the sheet repeats. */
    private static final Map<String, String> PLACES = new TreeMap<>(Map.ofEntries(
            Map.entry("sheet_id", "/reviewed/sheet"),
            Map.entry("version_no", "/reviewed/version"),
            Map.entry("signer_id", "/reviewed/signer/id"),
            Map.entry("signer_name", "/reviewed/signer/name"),
            Map.entry("signer_role", "/reviewed/signer/role"),
            Map.entry("meaning", "/reviewed/signer/meaningKey"),
            Map.entry("signed_at", "/signedAt"),
            Map.entry("signed_zone", "/signedZone"),
            Map.entry("programme_id", "/reviewed/operation/programme"),
            Map.entry("case_id", "/reviewed/operation/id"),
            Map.entry("case_ended_at", "/reviewed/operation/endedAt"),
            Map.entry("trainee_id", "/reviewed/trainee/id"),
            Map.entry("rubric_version_id", "/reviewed/rubric/id"),
            Map.entry("procedure_code", "/reviewed/rubric/procedure"),
            Map.entry("band", "/reviewed/operation/band"),
            Map.entry("confirmed_part", "/reviewed/confirmedPart"),
            Map.entry("given_supervision", "/reviewed/givenSupervision"),
            Map.entry("verdict", "/reviewed/verdict/verdict"),
            Map.entry("late", "/late")));

    @Override
    public Set<LeafKind> kinds() {
        return Set.of(LeafKind.SIGNATURE);
    }

    @Override
    public Look look(LeafKind kind, UUID record, Map<String, List<JsonNode>> rows) {
        List<JsonNode> sheets = rows.getOrDefault(SHEET, List.of());
        if (sheets.size() != 1) {
            return new Look(List.of(new Contradiction(SHEET, "id")), null);
        }
        SignedText signed = SignedText.of(SHEET, sheets.get(0));
        JsonNode content = signed.content();
        CredentialClaim claim = CredentialClaim.said(TableStatement.signedHash(content), content);
        return new Look(signed.hashed() ? contradictions(signed, rows) : signed.against(PLACES), claim);
    }

    private static List<Contradiction> contradictions(SignedText signed, Map<String, List<JsonNode>> rows) {
        JsonNode content = signed.content();
        List<Contradiction> wrong = new ArrayList<>(signed.against(PLACES));
        if (!reviewedHash(signed.text(), content)) {
            wrong.add(new Contradiction(SHEET, "content"));
        }
        if (!steps(rows.getOrDefault(STEP, List.of())).equals(said(content.at("/reviewed/steps")))) {
            wrong.add(new Contradiction(STEP, "state"));
        }
        if (!events(rows.getOrDefault(EVENT, List.of())).equals(told(content.at("/reviewed/events")))) {
            wrong.add(new Contradiction(EVENT, "event_code"));
        }
        return wrong;
    }

    /** The reviewed part stands in the canonical text byte for byte, between the members before and behind it. */
    private static boolean reviewedHash(String text, JsonNode content) {
        int from = text.indexOf(REVIEWED) + REVIEWED.length();
        int to = text.lastIndexOf(BEHIND);
        return from < to
                && CanonicalJson.sha256(text.substring(from, to))
                        .equals(content.path("reviewedHash").asString(""));
    }

    private static Map<String, String> steps(List<JsonNode> rows) {
        return rows.stream()
                .collect(Collectors.toMap(
                        row -> row.path("step_code").asString(""),
                        row -> line(row, "critical", "state", "level", "cause")));
    }

    private static Map<String, String> said(JsonNode steps) {
        return IntStream.range(0, steps.size())
                .mapToObj(steps::get)
                .collect(Collectors.toMap(
                        step -> step.path("code").asString(""),
                        step -> line(step, "critical", "state", "level", "cause"),
                        (one, other) -> one + other));
    }

    private static Map<String, String> events(List<JsonNode> rows) {
        return rows.stream()
                .collect(Collectors.toMap(
                        row -> row.path("ordinal").asString(""),
                        row -> line(row, "event_code", "step_code", "reason", "blocking")));
    }

    private static Map<String, String> told(JsonNode events) {
        return IntStream.range(0, events.size())
                .boxed()
                .collect(Collectors.toMap(
                        Object::toString, at -> line(events.get(at), "code", "step", "reason", "blocking")));
    }

    /** Values of these members, with nothing for one that has none. */
    private static String line(JsonNode node, String... members) {
        return Arrays.stream(members)
                .map(member ->
                        node.path(member).isNull() ? "" : node.path(member).asString(""))
                .collect(Collectors.joining("|"));
    }
}
