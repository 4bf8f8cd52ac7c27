package org.scrubline.casework.web;

import java.io.IOException;
import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.CaseSubmission;
import org.scrubline.platform.BodyJson;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.FreeText;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import tools.jackson.databind.JsonNode;

/**
 * A case as a device sends it: {@code {"submission": id, "person": id, "clock": {"device": instant, "zone": name,
 * "page": ms, "waited": ms or null}, "fields": {name: [text, …]}}}. Only answers of the form are read; a body with
 * anything else is none.
 *
 * @param person who kept it, as the device knows
 */
record CaseBody(CaseSubmission submission, String person, Typed typed) {

    private static final int LARGEST = 16 * 1024;
    private static final int MOST = 100;
    private static final Instant EARLIEST = Instant.parse("1900-01-01T00:00:00Z");
    private static final Instant LATEST = Instant.parse("9999-01-01T00:00:00Z");
    private static final String LEVEL = "level.";
    private static final Set<String> ANSWERS = Set.of(
            "programme",
            "reference",
            "procedure",
            "eye",
            "site",
            "endedAt",
            "endedOffset",
            "supervisor",
            "plannedSupervision",
            "claimedPart",
            "factors");

    /** The case in a request's body, empty when the body is none. */
    static Optional<CaseBody> read(InputStream body) throws IOException {
        Optional<JsonNode> root = BodyJson.read(body, LARGEST);
        try {
            return root.isPresent() ? of(root.get()) : Optional.empty();
        } catch (IllegalArgumentException | DateTimeException e) {
            return Optional.empty();
        }
    }

    private static Optional<CaseBody> of(JsonNode root) {
        String person = root.path("person").asString("");
        Optional<CaseSubmission.Kept> kept = kept(root.path("clock"));
        Optional<Map<String, List<String>>> fields = fields(root.path("fields"));
        if (person.isEmpty() || !root.path("submission").isString() || kept.isEmpty() || fields.isEmpty()) {
            return Optional.empty();
        }
        UUID id = UUID.fromString(root.path("submission").stringValue());
        String content = CanonicalJson.of(Map.of("fields", fields.get(), "person", person));
        return Optional.of(new CaseBody(new CaseSubmission(id, content, kept.get()), person, typed(fields.get())));
    }

    private static Optional<CaseSubmission.Kept> kept(JsonNode clock) {
        Instant at = Instant.parse(clock.path("device").asString(""));
        String zone = clock.path("zone").asString("");
        JsonNode waited = clock.path("waited");
        boolean plausible = !at.isBefore(EARLIEST) && at.isBefore(LATEST) && zone.matches("[A-Za-z0-9_+/-]{1,64}");
        if (!plausible || !millis(clock.path("page")) || !(waited.isNull() || millis(waited))) {
            return Optional.empty();
        }
        @Nullable Long passed = waited.isNull() ? null : waited.longValue();
        return Optional.of(new CaseSubmission.Kept(at, zone, clock.path("page").longValue(), passed));
    }

    private static boolean millis(JsonNode node) {
        return node.isIntegralNumber() && node.canConvertToLong() && node.longValue() >= 0;
    }

    private static Optional<Map<String, List<String>>> fields(JsonNode node) {
        Map<String, List<String>> fields = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> field : node.properties()) {
            List<String> texts = new ArrayList<>();
            field.getValue().forEach(text -> texts.add(text.isString() ? text.stringValue() : "\0"));
            boolean several = field.getKey().equals("factors");
            boolean shaped = field.getValue().isArray() && !texts.isEmpty() && (several || texts.size() == 1);
            boolean asked = ANSWERS.contains(field.getKey()) || field.getKey().startsWith(LEVEL);
            if (!shaped || !asked || texts.stream().anyMatch(FreeText::hasForbiddenCharacter)) {
                return Optional.empty();
            }
            fields.put(field.getKey(), texts);
        }
        return node.isObject() && fields.size() <= MOST ? Optional.of(fields) : Optional.empty();
    }

    /** The answers of a content as it was stored. */
    static Typed stored(String content) {
        return typed(fields(CanonicalJson.read(content, JsonNode.class).path("fields"))
                .orElseThrow());
    }

    private static Typed typed(Map<String, List<String>> fields) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        fields.forEach((name, texts) -> texts.forEach(text -> values.add(name, text)));
        return new Typed(values);
    }

    /** Level by step code; something that is no level counts as level 0, which is refused. */
    static Map<String, Integer> levels(Typed typed) {
        Map<String, Integer> levels = new LinkedHashMap<>();
        typed.values().toSingleValueMap().forEach((field, value) -> {
            if (field.startsWith(LEVEL)) {
                levels.put(field.substring(LEVEL.length()), value.matches("[1-5]") ? Integer.parseInt(value) : 0);
            }
        });
        return levels;
    }
}
