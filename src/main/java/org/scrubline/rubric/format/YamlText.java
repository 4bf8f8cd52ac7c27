package org.scrubline.rubric.format;

import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
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
            return MAPPER.readTree(text);
        } catch (JacksonException e) {
            String fault = e.getOriginalMessage().lines().findFirst().orElse("not YAML");
            throw new RubricFormatException(
                    file + ", line " + e.getLocation().getLineNr() + ": cannot be read: " + fault);
        }
    }
}
