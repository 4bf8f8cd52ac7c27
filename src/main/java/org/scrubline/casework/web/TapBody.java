package org.scrubline.casework.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.BodyJson;
import tools.jackson.databind.JsonNode;

/**
 * One tap as the page sends it: {@code {"tap": id, "version": number, "fields": {name: text, …}}}.
 *
 * @param tap id the page made for it
 * @param version the version it was made on
 * @param person who made it, as the sending device knows; empty when it does not say
 */
record TapBody(UUID tap, int version, String person, SheetInput sent) {

    private static final int LARGEST = 16 * 1024;
    private static final int MOST_FIELDS = 50;

    /** The tap in a request's body, empty when the body is none. */
    static Optional<TapBody> read(InputStream body) throws IOException {
        Optional<JsonNode> root = BodyJson.read(body, LARGEST);
        try {
            return root.isPresent() ? of(root.get()) : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Optional<TapBody> of(JsonNode root) {
        JsonNode tap = root.path("tap");
        JsonNode version = root.path("version");
        JsonNode fields = root.path("fields");
        boolean shaped = tap.isString() && version.isInt() && fields.isObject();
        if (!shaped || fields.size() > MOST_FIELDS) {
            return Optional.empty();
        }
        Map<String, String> texts = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> field : fields.properties()) {
            if (!field.getValue().isString()) {
                return Optional.empty();
            }
            texts.put(field.getKey(), field.getValue().stringValue());
        }
        return Optional.of(new TapBody(
                UUID.fromString(tap.stringValue()),
                version.intValue(),
                root.path("person").asString(""),
                new SheetInput(texts)));
    }
}
