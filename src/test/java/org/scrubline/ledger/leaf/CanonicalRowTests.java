package org.scrubline.ledger.leaf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.CanonicalJson;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The short way writes what the library writes; the library itself is held by the published documents of RFC 8785. */
class CanonicalRowTests {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    @Test
    void anyRowReadsAsTheLibraryWritesIt() {
        Random random = new Random(20261127);
        for (int n = 0; n < 5_000; n++) {
            ObjectNode row = MAPPER.createObjectNode();
            for (int column = random.nextInt(8); column >= 0; column--) {
                put(row, text(random), random);
            }
            assertThat(CanonicalRow.of(row)).isEqualTo(CanonicalJson.canonical(row.toString()));
        }
    }

    private static void put(ObjectNode row, String name, Random random) {
        switch (random.nextInt(7)) {
            case 0 -> row.put(name, random.nextBoolean());
            case 1 -> row.put(name, random.nextLong());
            case 2 -> row.put(name, random.nextInt(100) - 50);
            case 3 -> row.put(name, random.nextDouble() * 1e6);
            case 4 -> row.putObject(name).put(text(random), random.nextInt());
            default -> row.put(name, text(random));
        }
    }

    private static String text(Random random) {
        int[] codes = random.ints(random.nextInt(12), 0, 0x2FF).toArray();
        return new String(codes, 0, codes.length) + (random.nextInt(10) == 0 ? "\uD83D\uDC41" : "");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{}",
                "{\"b\":1,\"a\":\"\\u0000\\u001f\\b\\t\\n\\f\\r\\\"\\\\/\u007f\u2028é\"}",
                "{\"n\":9007199254740992,\"m\":-9007199254740993,\"x\":1.0,\"y\":1e21,\"z\":0.10}",
                "{\"\u20ac\":1,\"\\r\":2,\"1\":3,\"\u0080\":4}"
            })
    void theEdgesToo(String json) {
        ObjectNode row = (ObjectNode) MAPPER.readTree(json);
        assertThat(CanonicalRow.of(row)).isEqualTo(CanonicalJson.canonical(json));
    }

    @Test
    void halfAPairIsLeftToTheLibrary() {
        ObjectNode row = MAPPER.createObjectNode().put("a", "\uD83D");
        assertThat(CanonicalRow.of(row)).isEqualTo(CanonicalJson.canonical(row.toString()));
    }
}
