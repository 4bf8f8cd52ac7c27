package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

class BodyJsonTests {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{",
                "{} {}",
                "{\"a\":1,\"a\":2}",
                "{\"a\":{\"b\":1,\"b\":1}}",
                "{\"a\":\"\\u0000\"}",
                "{\"\\u0000\":1}",
                "{\"a\":[\"\\ud800\"]}",
                "{\"a\":NaN}",
                "{'a':1}",
                "[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]",
                "12345678901234567890123456789012345678901"
            })
    void whatNoRouteAsksForIsNoJson(String text) throws IOException {
        assertThat(read(text, 1000)).isEmpty();
        assertThat(BodyJson.holds(text, 1000)).isFalse();
    }

    @Test
    void aHundredThousandLevelsAndAMegabyteOfDigitsAreRefusedAtOnce() throws IOException {
        assertThat(read("[".repeat(100_000), 1 << 20)).isEmpty();
        assertThat(read("9".repeat(1_000_000), 1 << 20)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"a\":{\"b\":[1,null,true,\"x\\n\\t\"]}}",
                "\"\\ud83d\\ude00 José\"",
                "[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]"
            })
    void plainJsonIsRead(String text) throws IOException {
        assertThat(read(text, 1000)).isPresent();
        assertThat(BodyJson.holds(text, 1000)).isTrue();
    }

    @Test
    void oneByteTooManyIsTooLong() throws IOException {
        String text = "\"" + "x".repeat(98) + "\"";
        assertThat(read(text, 100)).isPresent();
        assertThat(read(text, 99)).isEmpty();
    }

    private static Optional<JsonNode> read(String text, int largest) throws IOException {
        return BodyJson.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), largest);
    }
}
