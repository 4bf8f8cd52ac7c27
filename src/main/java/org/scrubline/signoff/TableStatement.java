package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.signoff.SignedContent.DeviceTime;
import tools.jackson.databind.JsonNode;

/**
 * What a passkey signs on a device that has no network: everything scored, the case and the rubric by their references,
 * the verdict, the meaning, and the clock of the device. No name stands in it, because none lies on the device.
 *
 * <p>Made from the JSON of a {@link SheetContent} and the time of the device, so a record that was signed so proves its
 * signature from its own text. The device makes the same bytes from what it keeps.
 */
final class TableStatement {

    private static final String SCHEMA = "scrubline-table/1";

    private static final Map<String, String> FIXED = new TreeMap<>(Map.of(
            "sheet", "/sheet",
            "reference", "/operation/reference",
            "endedAt", "/operation/endedAt",
            "rubric", "/rubric/contentHash",
            "signer", "/signer/id",
            "meaning", "/signer/meaning"));

    private static final Map<String, String> SCORED = new TreeMap<>(Map.of(
            "part", "/confirmedPart",
            "supervision", "/givenSupervision",
            "strength", "/strength",
            "nextStep", "/nextStep",
            "verdict", "/verdict/verdict"));

    private TableStatement() {}

    /** The members that scoring does not change, which the device is told before it is offline. */
    static Map<String, Object> fixed(JsonNode reviewed) {
        Map<String, Object> members = new LinkedHashMap<>();
        members.put("schema", SCHEMA);
        FIXED.forEach((name, place) -> members.put(name, text(reviewed.at(place))));
        return members;
    }

    /** SHA-256 of the canonical JSON, lower-case hexadecimal; {@code at} counts in whole seconds. */
    static String hash(JsonNode reviewed, Instant at, ZoneId zone) {
        return hash(reviewed, at.truncatedTo(ChronoUnit.SECONDS).toString(), zone.getId());
    }

    /** What a passkey must have signed under this text of a signed record: the reviewed hash, or this statement's. */
    static String signedHash(JsonNode content) {
        JsonNode device = content.path("device");
        return device.isObject()
                ? hash(content.path("reviewed"), text(device.path("at")), text(device.path("zone")))
                : text(content.path("reviewedHash"));
    }

    /** The same of a content that is not text yet. */
    static String signedHash(SignedContent content) {
        DeviceTime device = content.device();
        return device == null ? content.reviewedHash() : hash(tree(content.reviewed()), device.at(), device.zone());
    }

    static JsonNode tree(SheetContent content) {
        return CanonicalJson.read(CanonicalJson.of(content), JsonNode.class);
    }

    private static String hash(JsonNode reviewed, String at, String zone) {
        Map<String, Object> members = fixed(reviewed);
        SCORED.forEach((name, place) -> members.put(name, text(reviewed.at(place))));
        members.put("steps", steps(reviewed.path("steps")));
        members.put("measures", measures(reviewed.path("measures")));
        members.put("events", events(reviewed.path("events")));
        members.put("at", at);
        members.put("zone", zone);
        return CanonicalJson.sha256(CanonicalJson.of(members));
    }

    /** Answers by step code; a blank step has none. */
    private static Map<String, String> steps(JsonNode steps) {
        Map<String, String> answers = new TreeMap<>();
        for (JsonNode step : steps) {
            if (!text(step.path("state")).equals("BLANK")) {
                answers.put(text(step.path("code")), answer(step));
            }
        }
        return answers;
    }

    private static String answer(JsonNode step) {
        String state = text(step.path("state"));
        String cause = text(step.path("cause"));
        return switch (state) {
            case "SCORED" -> text(step.path("level"));
            case "BY_SUPERVISOR" -> cause.equals("AFTER_TAKEOVER") ? cause : state;
            default -> state;
        };
    }

    private static Map<String, String> measures(JsonNode measures) {
        Map<String, String> values = new TreeMap<>();
        measures.forEach(measure -> values.put(text(measure.path("code")), text(measure.path("value"))));
        return values;
    }

    private static List<Map<String, String>> events(JsonNode events) {
        return IntStream.range(0, events.size())
                .mapToObj(events::get)
                .map(event -> Map.of(
                        "code", text(event.path("code")),
                        "step", text(event.path("step")),
                        "reason", text(event.path("reason")),
                        "action", text(event.path("action"))))
                .toList();
    }

    private static String text(JsonNode node) {
        return node.isNull() ? "" : node.asString("");
    }
}
