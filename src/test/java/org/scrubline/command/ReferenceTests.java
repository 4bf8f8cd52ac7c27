package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Runs every file of {@code src/test/resources/reference} through the command and compares each expected key at its own
 * tolerance, and with the figure its source prints where one is given. The files hold published facts with their sources: articles, a handbook, certified data sets and reference
 * libraries, named in each file's {@code source} and {@code computed_with}.
 */
class ReferenceTests {
    private static final Path FILES = Path.of("src/test/resources/reference");
    private static final int FILE_COUNT = 33;
    private static final int KEY_COUNT = 793;

    @TestFactory
    List<DynamicNode> everyExpectedKeyIsProducedWithinItsTolerance() throws IOException {
        List<DynamicNode> files = new ArrayList<>();
        for (Path file : files()) {
            JsonNode reference = read(Files.readString(file));
            List<DynamicNode> keys = new ArrayList<>();
            JsonNode actual = run(reference.get("method").asString(), file);
            reference
                    .get("expected")
                    .forEach(expected -> keys.add(
                            DynamicTest.dynamicTest(expected.get("key").asString(), () -> compare(expected, actual))));
            files.add(DynamicContainer.dynamicContainer(file.getFileName() + " (" + keys.size() + " keys)", keys));
        }
        return files;
    }

    @Test
    void noReferenceFileAndNoKeyIsLost() throws IOException {
        int keys = 0;
        for (Path file : files()) {
            keys += read(Files.readString(file)).get("expected").size();
        }
        System.out.println("Reference files: " + files().size() + ", expected keys: " + keys);
        assertThat(files()).hasSize(FILE_COUNT);
        assertThat(keys).isEqualTo(KEY_COUNT);
    }

    private static void compare(JsonNode expected, JsonNode actual) {
        String key = expected.get("key").asString();
        assertThat(actual.has(key)).as("the key %s is produced", key).isTrue();
        if (expected.get("value").isNull()) {
            assertThat(actual.get(key).isNull()).isTrue();
            return;
        }
        assertThat(actual.get(key).isNumber()).as("%s is a number", key).isTrue();
        assertThat(actual.get(key).asDouble())
                .as(key)
                .isCloseTo(
                        expected.get("value").asDouble(),
                        within(expected.get("abs_tol").asDouble()));
        if (expected.has("printed") && expected.has("printed_tol")) {
            assertThat(actual.get(key).asDouble())
                    .as("%s as printed by the source", key)
                    .isCloseTo(
                            Double.parseDouble(expected.get("printed").asString()),
                            within(expected.get("printed_tol").asDouble() + 1e-12));
        }
    }

    private static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(FILES)) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList();
        }
    }

    private static JsonNode run(String method, Path file) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Commands.run(
                        List.of("statistic", method, file.toString()),
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8))
                .orElseThrow();
        assertThat(err.toString(StandardCharsets.UTF_8)).as(file.toString()).isEmpty();
        assertThat(code).isZero();
        return read(out.toString(StandardCharsets.UTF_8));
    }

    private static JsonNode read(String json) {
        return JsonMapper.shared().readTree(json);
    }
}
