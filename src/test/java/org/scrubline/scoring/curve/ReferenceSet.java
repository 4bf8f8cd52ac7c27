package org.scrubline.scoring.curve;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** One set of src/test/resources/reference_model: simulated scores with estimates by independent programs. */
record ReferenceSet(List<ObservedScore> scores, JsonNode expected) {

    static ReferenceSet read(String name) {
        String csv = text(name + ".csv");
        List<ObservedScore> scores = new ArrayList<>();
        csv.lines().skip(1).forEach(line -> scores.add(score(line.split(","))));
        return new ReferenceSet(scores, JsonMapper.shared().readTree(text(name + ".expected.json")));
    }

    private static ObservedScore score(String[] c) {
        CaseContext context = new CaseContext(
                c[2],
                Long.parseLong(c[2]),
                Double.parseDouble(c[3]),
                Double.parseDouble(c[4]),
                List.of(Double.parseDouble(c[6]), Double.parseDouble(c[7]), Double.parseDouble(c[8])));
        return new ObservedScore(c[0], c[1], c[5], context, c[9], Integer.parseInt(c[10]), Integer.parseInt(c[11]));
    }

    private static String text(String file) {
        try (InputStream in = ReferenceSet.class.getResourceAsStream("/reference_model/" + file)) {
            if (in == null) {
                throw new IllegalStateException("no reference file " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    ScoreTable table() {
        int steps = expected.path("psi").path("beta").size();
        int supervisors = expected.has("supervisors")
                ? expected.path("supervisors").path("severity").size()
                : expected.path("supervisor_severity").size();
        ScoreTableBuilder builder = new ScoreTableBuilder(5, ids(steps), ids(supervisors));
        scores.forEach(builder::add);
        return builder.build();
    }

    private static List<String> ids(int count) {
        return IntStream.range(0, count).mapToObj(Integer::toString).toList();
    }

    Psi psi() {
        JsonNode p = expected.path("psi");
        return new Psi(
                list(p.path("tau")),
                list(p.path("beta")),
                list(p.path("gamma")),
                p.path("mu_g").asDouble(0),
                p.path("phi").asDouble(0),
                p.path("s_a").asDouble(0),
                p.path("s_g").asDouble(0),
                p.path("s_d").asDouble(0),
                p.path("s_u").asDouble(0),
                p.path("s_l").asDouble(0),
                p.path("s_n").asDouble(0),
                p.path("q").asDouble(0),
                p.path("qg").asDouble(0),
                List.of(),
                List.of());
    }

    double tolerance(String name) {
        return expected.path("tolerances").path(name).asDouble();
    }

    static List<Double> list(JsonNode array) {
        List<Double> values = new ArrayList<>();
        array.forEach(v -> values.add(v.asDouble()));
        return values;
    }
}
