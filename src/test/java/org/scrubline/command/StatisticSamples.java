package org.scrubline.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Usable data for every method, and runs of the command on data of a test's own. */
final class StatisticSamples {
    private static final Path REFERENCES = Path.of("src/test/resources/reference");

    /** Methods and options that no reference file shows; invented data. */
    private static final Map<String, String> MORE = Map.ofEntries(
            Map.entry("kendall_w", "{\"ratings\": [[1, 2, 1], [2, 1, 2], [3, 3, 3], [4, 4, 4.5], [4, 5, 5]]}"),
            Map.entry(
                    "kappa_table",
                    "{\"table\": [[20, 5, 1], [3, 12, 4], [0, 2, 9]], \"gwet\": true,"
                            + " \"agreement_weights\": [[1, 0.5, 0], [0.5, 1, 0.5], [0, 0.5, 1]]}"),
            Map.entry("fleiss", "{\"counts\": [[4, 0, 0], [1, 2, 1], [0, 4, 0], [0, 1, 3], [2, 2, 0]]}"),
            Map.entry(
                    "g_pxi",
                    "{\"scores\": [[4, 5, 3], [2, 3, 2], [5, 5, 4], [1, 3, 1]], \"D_items\": [6],"
                            + " \"phi_lambda_cuts\": [3, 4.5]}"),
            Map.entry("g_inp", "{\"scores\": [[4, 5, 3], [2, 3, 2], [5, 5, 4], [1, 3, 1]], \"D_items\": [1, 6]}"),
            Map.entry(
                    "g_pxixo",
                    "{\"scores\": [[[3, 4], [4, 5], [3, 5]], [[1, 2], [2, 2], [2, 3]], [[4, 5], [5, 5], [3, 5]],"
                            + " [[2, 2], [4, 3], [1, 3]]], \"D\": [[2, 3], [10, 1]]}"),
            Map.entry(
                    "lccusum_smallest_h",
                    "{\"p0_adequate_failure\": 0.1, \"p1_inadequate_failure\": 0.3, \"grid_step\": 0.01,"
                            + " \"N\": [30, 60], \"alpha\": [0.1, 0.05]}"),
            Map.entry(
                    "cusum_signal_prob",
                    "{\"cases\": [{\"failure_probability\": 0.1, \"odds_multiplier\": 2, \"n\": 50, \"limit\": 2.5},"
                            + " {\"failure_probability\": 0.2, \"odds_multiplier\": 0.5, \"n\": 40, \"limit\": -1.5}]}"),
            Map.entry("ewma", "{\"x\": [52, 47, 53], \"lambda\": 0.3, \"target\": 50, \"sigma\": 2, \"L\": 3}"),
            Map.entry(
                    "clm",
                    "{\"y\": [1, 2, 3, 1, 2, 3], \"X\": [[0], [0], [0], [1], [1], [1]], \"names\": [\"late\"],"
                            + " \"weight\": [10, 5, 3, 4, 6, 9]}"),
            Map.entry(
                    "clmm",
                    "{\"y\": [1, 2, 2, 3, 1, 1, 2, 1, 3, 3, 2, 3], \"X\": [[0], [1], [0], [1], [0], [1], [0], [1], [0],"
                            + " [1], [0], [1]], \"names\": [\"late\"], \"group\": [\"a\", \"a\", \"a\", \"a\", \"b\","
                            + " \"b\", \"b\", \"b\", \"c\", \"c\", \"c\", \"c\"],"
                            + " \"quadrature\": {\"laplace\": 1, \"agq10\": 10}, \"se_for\": [\"agq10\"]}"),
            Map.entry(
                    "mfrm",
                    "{\"person\": [1, 1, 2, 2, 3, 3, 4, 4, 5, 5], \"rater\": [\"A\", \"B\", \"A\", \"B\", \"A\", \"B\","
                            + " \"A\", \"B\", \"A\", \"B\"], \"items\": [\"x\", \"y\"], \"scores\": {\"x\": [0, 1, 1, 2,"
                            + " 2, 2, 0, 0, 1, 2], \"y\": [0, 0, 1, 1, 2, 1, null, 1, 1, 1]}, \"nodes\": 61}"),
            Map.entry(
                    "funnel",
                    "{\"target\": 0.1, \"n\": [20], \"tail_p\": [0.025, 0.975], \"units\": [[1, 20], [5, 30], [4, 60],"
                            + " [9, 25], [0, 12]], \"winsor\": 0.1}"),
            Map.entry("isotonic", "{\"y\": [1, 0, 4, 3], \"w\": [1, 3, 2, 2]}"),
            Map.entry("bh", "{\"p\": [0.01, 0.04, 0.03, 0.5], \"q\": 0.05}"));

    private StatisticSamples() {}

    record Sample(String method, ObjectNode data) {}

    record Outcome(int code, String out, String err) {
        JsonNode json() {
            return JsonMapper.shared().readTree(out);
        }
    }

    /** One sample from each reference file, then one for each further method or option, by name. */
    static Map<String, Sample> all() throws IOException {
        Map<String, Sample> samples = new LinkedHashMap<>();
        try (Stream<Path> files = Files.list(REFERENCES)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
                JsonNode root = JsonMapper.shared().readTree(Files.readString(file));
                samples.put(
                        file.getFileName().toString(),
                        new Sample(root.get("method").asString(), (ObjectNode) root.get("data")));
            }
        }
        MORE.forEach((method, data) -> samples.put(method, new Sample(method, object(data))));
        return samples;
    }

    static ObjectNode object(String json) {
        return (ObjectNode) JsonMapper.shared().readTree(json);
    }

    static Outcome run(String method, JsonNode data, Path folder) throws IOException {
        Path file = folder.resolve("data.json");
        Files.writeString(file, "{\"data\": " + data + "}");
        return run(List.of(method, file.toString()));
    }

    static Outcome run(List<String> args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        List<String> line = new ArrayList<>(List.of("statistic"));
        line.addAll(args);
        int code = Commands.run(
                        line,
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8))
                .orElseThrow();
        return new Outcome(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
