package org.scrubline.platform;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * JSON from outside, for every route that takes some: no deeper and no longer than anything that is asked for, each name once
 * in an object, and no text a database cannot hold (NUL, halves of surrogate pairs).
 */
public final class BodyJson {

    /** The deepest that is asked for, a passkey's answer or a message of a directory, has five levels. */
    private static final int DEEPEST = 16;

    private static final int LONGEST_NUMBER = 40;

    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxNumberLength(LONGEST_NUMBER)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private BodyJson() {}

    /**
     * What stands in a body, empty when it is longer than allowed or no such JSON.
     *
     * @param largest in bytes
     */
    public static Optional<JsonNode> read(InputStream body, int largest) throws IOException {
        byte[] bytes = body.readNBytes(largest + 1);
        return bytes.length > largest ? Optional.empty() : read(bytes);
    }

    /** Whether a text is such JSON, before a library that is less strict reads it. */
    public static boolean holds(String text, int largest) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        return bytes.length <= largest && read(bytes).isPresent();
    }

    private static Optional<JsonNode> read(byte[] bytes) {
        try {
            return Optional.of(MAPPER.readTree(bytes)).filter(root -> !root.isMissingNode() && storable(root));
        } catch (JacksonException e) {
            return Optional.empty();
        }
    }

    private static boolean storable(JsonNode node) {
        boolean text = !node.isString() || storable(node.stringValue());
        return text
                && node.properties().stream().allMatch(field -> storable(field.getKey()))
                && node.values().stream().allMatch(BodyJson::storable);
    }

    private static boolean storable(String text) {
        return text.codePoints()
                .noneMatch(
                        point -> point == 0 || (point >= Character.MIN_SURROGATE && point <= Character.MAX_SURROGATE));
    }
}
