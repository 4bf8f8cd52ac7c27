package org.scrubline.rubric.format;

import java.util.HashMap;
import java.util.Map;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonPointer;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.dataformat.yaml.YAMLMapper;

/** Parses YAML; a key written twice is refused and decimal numbers keep their digits. */
final class YamlText {

    private static final YAMLMapper MAPPER = YAMLMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private YamlText() {}

    static JsonNode parse(String file, String text) {
        try {
            JsonNode root = MAPPER.readTree(text);
            if (root == null || root.isMissingNode()) {
                throw new RubricFormatException(file + ": nothing is written here", 1);
            }
            return root;
        } catch (JacksonException e) {
            String fault = e.getOriginalMessage().lines().findFirst().orElse("not YAML");
            TokenStreamLocation place = e.getLocation();
            // What is nested too deep has no place.
            int line = place == null ? 0 : place.getLineNr();
            String where = line > 0 ? file + ", line " + line : file;
            throw new RubricFormatException(where + ": cannot be read: " + fault, line);
        }
    }

    /** The line of every value of a text that can be parsed. */
    static Lines lines(String text, JsonNode root) {
        Map<JsonPointer, Integer> lines = new HashMap<>();
        try (JsonParser parser = MAPPER.createParser(text)) {
            while (parser.nextToken() != null) {
                lines.putIfAbsent(
                        parser.streamReadContext().pathAsPointer(),
                        parser.currentTokenLocation().getLineNr());
            }
        }
        return new Lines(lines, root);
    }
}
