package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The command against the sets of src/test/resources/reference_model (sources in their README). */
class CurvesCommandTests {

    private static final String HEADER =
            "assessment,trainee,case_index,experience,gap_excess,supervisor,x1,x2,x3,step,lo,hi\n";

    @TempDir
    Path dir;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        out.reset();
        err.reset();
        List<String> line = new ArrayList<>(List.of("curves"));
        line.addAll(List.of(args));
        return Commands.run(
                        line,
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8))
                .orElseThrow();
    }

    private int run(Path scores, Path config, String... more) {
        List<String> args = new ArrayList<>(List.of("--scores", scores.toString(), "--config", config.toString()));
        args.addAll(List.of(more));
        return run(args.toArray(String[]::new));
    }

    private JsonNode result() {
        assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
        return JsonMapper.shared().readTree(out.toByteArray());
    }

    private Path resource(String name) throws IOException {
        try (InputStream in = CurvesCommandTests.class.getResourceAsStream("/reference_model/" + name)) {
            Path file = dir.resolve(name);
            Files.write(file, in.readAllBytes());
            return file;
        }
    }

    private Path file(String name, String text) throws IOException {
        return Files.writeString(dir.resolve(name), text);
    }

    private JsonNode expected(String set) throws IOException {
        return JsonMapper.shared().readTree(Files.readString(resource(set + ".expected.json")));
    }

    private Path config(JsonNode expected, String estimate, String priors) throws IOException {
        ObjectNode config = JsonMapper.shared().createObjectNode();
        config.put("K", 5)
                .put("S", expected.path("psi").path("beta").size())
                .put("kappa", 20)
                .put("standard", 4);
        JsonNode severity = expected.has("supervisors")
                ? expected.path("supervisors").path("severity")
                : expected.path("supervisor_severity");
        config.put("supervisors", severity.size());
        if (expected.has("critical_steps")) {
            config.set("critical_steps", expected.path("critical_steps"));
        } else {
            config.putArray("terms").add("assessment");
        }
        if (estimate.equals("given")) {
            config.set("psi", expected.path("psi"));
        }
        return file(
                "config.json",
                config.put("estimate", estimate).put("priors", priors).toString());
    }

    @Test
    void givenParametersReproduceTheReference() throws IOException {
        JsonNode expected = expected("p2_dynamic_given_psi");
        Path scores = resource("p2_dynamic_given_psi.csv");
        assertThat(run(scores, config(expected, "given", "none"), "--gradient")).isZero();
        JsonNode result = result();
        agree(result, expected);
        for (String group : expected.path("gradient_at_psi").propertyNames()) {
            near(
                    result.path("gradient_at_psi").path(group),
                    expected.path("gradient_at_psi").path(group),
                    0.01);
        }
    }

    @Test
    void fittedParametersReproduceTheReference() throws IOException {
        JsonNode expected = expected("p3_dynamic_fit");
        assertThat(run(resource("p3_dynamic_fit.csv"), config(expected, "fit", "default")))
                .isZero();
        JsonNode result = result();
        agree(result, expected);
        double tolerance =
                expected.path("tolerances").path("psi_tau_beta_gamma_abs").asDouble();
        for (String group : List.of("tau", "beta", "gamma")) {
            near(result.path("psi").path(group), expected.path("psi").path(group), tolerance);
        }
    }

    @Test
    void theStaticModelReproducesClmm() throws IOException {
        JsonNode expected = expected("p1_static_clmm");
        assertThat(run(resource("p1_static_clmm.csv"), config(expected, "fit", "none")))
                .isZero();
        JsonNode result = result();
        assertThat(result.path("laplace_loglik").asDouble())
                .isCloseTo(expected.path("cross_check").path("loglik").asDouble(), within(1e-3));
        for (String group : List.of("tau", "beta", "gamma")) {
            near(result.path("psi").path(group), expected.path("psi").path(group), 0.01);
        }
        for (String sd : List.of("s_a", "s_u", "s_l")) {
            assertThat(result.path("psi").path(sd).asDouble())
                    .isCloseTo(expected.path("psi").path(sd).asDouble(), within(0.01));
        }
        near(result.path("trainee_effects"), expected.path("trainee_effects"), 0.01);
        near(result.path("supervisor_severity"), expected.path("supervisor_severity"), 0.01);
        near(result.path("supervisor_sd_laplace"), expected.path("supervisor_sd_laplace"), 0.01);
    }

    private static void agree(JsonNode result, JsonNode expected) {
        JsonNode tolerance = expected.path("tolerances");
        double mean = tolerance.path("mean_abs").asDouble();
        assertThat(result.path("laplace_loglik").asDouble())
                .isCloseTo(
                        expected.path("laplace_loglik").asDouble(),
                        within(tolerance.path("loglik_abs").asDouble()));
        assertThat(result.path("trainees").size())
                .isEqualTo(expected.path("trainees").size());
        near(
                result.path("supervisors").path("severity"),
                expected.path("supervisors").path("severity"),
                mean);
        for (int t = 0; t < expected.path("trainees").size(); t++) {
            JsonNode have = result.path("trainees").path(t);
            JsonNode want = expected.path("trainees").path(t);
            assertThat(have.path("trainee")).isEqualTo(want.path("trainee"));
            for (String key : List.of("ability_minus_tau4_mean", "panel_mean", "delta")) {
                near(have.path(key), want.path(key), mean);
            }
            near(have.path("ability_sd"), want.path("ability_sd"), mean);
            near(have.path("panel_sd"), want.path("panel_sd"), mean);
            near(have.path("filter_seq_mean"), want.path("filter_seq_mean"), mean + 0.01);
            JsonNode next = have.path("readiness_next_case");
            JsonNode wanted = want.path("readiness_next_case");
            near(next.path("p_step"), wanted.path("p_step"), 0.01);
            for (String key : List.of("p_all", "assurance_p50", "assurance_p20")) {
                assertThat(next.path(key).asDouble()).isCloseTo(wanted.path(key).asDouble(), within(0.01));
            }
        }
    }

    private static void near(JsonNode have, JsonNode want, double tolerance) {
        assertThat(have.size()).isEqualTo(want.size()).isPositive();
        for (int i = 0; i < want.size(); i++) {
            assertThat(have.path(i).asDouble()).isCloseTo(want.path(i).asDouble(), within(tolerance));
        }
    }

    @Test
    void theOrderOfRowsChangesNoByte() throws IOException {
        JsonNode expected = expected("p3_dynamic_fit");
        Path config = config(expected, "fit", "default");
        assertThat(run(resource("p3_dynamic_fit.csv"), config)).isZero();
        byte[] first = out.toByteArray();
        List<String> rows = new ArrayList<>(Files.readAllLines(resource("p3_dynamic_fit.csv")));
        String header = rows.remove(0);
        Collections.shuffle(rows, new Random(7));
        assertThat(run(file("shuffled.csv", header + "\n" + String.join("\n", rows)), config))
                .isZero();
        assertThat(out.toByteArray()).isEqualTo(first);
    }

    @Test
    void textIdsAreKept() throws IOException {
        Path scores = file(
                "scores.csv",
                HEADER
                        + "first,\"Hallinor, F.\",0,0,0,Dr \"\"A\"\",0,0,0,flap,3,3\n"
                                .replace("Dr \"\"A\"\"", "\"Dr \"\"A\"\"\"")
                        + "first,\"Hallinor, F.\",0,0,0,\"Dr \"\"A\"\"\",0,0,0,entry,4,5\n");
        Path config = file("config.json", "{\"critical_steps\":[\"flap\"]}");
        assertThat(run(scores, config)).isZero();
        JsonNode result = result();
        assertThat(result.path("trainees").path(0).path("trainee").asString()).isEqualTo("Hallinor, F.");
        assertThat(result.path("supervisors").path("ids").path(0).asString()).isEqualTo("Dr \"A\"");
        assertThat(result.path("steps").toString()).isEqualTo("[\"flap\",\"entry\"]");
        JsonNode readiness = result.path("trainees").path(0).path("readiness");
        assertThat(readiness.path(0).path("says").asString()).isEqualTo("insufficient evidence");
    }

    @Test
    void anEmptyScoreFileGivesAnEmptyResult() throws IOException {
        assertThat(run(file("scores.csv", HEADER), file("config.json", "{\"S\":3,\"supervisors\":2}")))
                .isZero();
        assertThat(result().path("trainees").size()).isZero();
        assertThat(result().path("supervisors").path("severity").size()).isEqualTo(2);
    }

    @Test
    void pictures() throws IOException {
        JsonNode expected = expected("p2_dynamic_given_psi");
        Path pictures = dir.resolve("pictures");
        Path target = dir.resolve("curves.json");
        int code = run(
                resource("p2_dynamic_given_psi.csv"),
                config(expected, "given", "none"),
                "--svg",
                pictures.toString(),
                "--out",
                target.toString());
        assertThat(code).isZero();
        assertThat(out.size()).isZero();
        assertThat(JsonMapper.shared()
                        .readTree(Files.readString(target))
                        .path("trainees")
                        .size())
                .isEqualTo(5);
        assertThat(pictures.resolve("trainee-4.svg"))
                .content()
                .contains("<title", "<desc", "<polyline", "90 % band", "does not replace");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            0,0,0,0,0,0,0,0,0,a,3 | {} | line 2 has 11 cells
            0,0,0,0,0,0,0,0,0,a,6,6 | {} | above the highest level 5
            0,0,0,0,0,0,0,0,0,a,3,2 | {} | levels must run upwards
            0,0,0,0,0,0,0,0,0,a,x,2 | {} | not a number
            0,0,0,-1,0,0,0,0,0,a,3,3 | {} | experience must be 0 or more
            0,0,0,NaN,0,0,0,0,0,a,3,3 | {} | experience must be 0 or more
            0,,0,0,0,0,0,0,0,a,3,3 | {} | has no trainee
            0,0,0,0,0,0,0,0,0,a,3,3 | {"critical_steps":["b"]} | critical step b is not among the steps
            0,0,0,0,0,0,0,0,0,a,3,3 | {"K":1} | K must be a whole number from 2
            0,0,0,0,0,0,0,0,0,a,3,3 | {"colour":1} | unknown config key "colour"
            0,0,0,0,0,0,0,0,0,a,3,3 | {"terms":["luck"]} | unknown term "luck"
            0,0,0,0,0,0,0,0,0,a,3,3 | {"psi":{"tau":[1,2]}} | psi.tau has 2 numbers
            0,0,0,0,0,0,0,0,0,a,3,3 | {"psi":{"tau":[3,2,1,0]}} | thresholds must rise
            0,0,0,0,0,0,0,0,0,a,3,3 | {"psi":{"s_a":-1}} | must be 0 or more
            0,0,0,0,0,0,0,0,0,a,3,3 | {"estimate":"guess"} | must be "given" or "fit"
            0,0,0,0,0,0,0,0,0,a,3,3 | {"priors":{"ls_a":[0]}} | needs [mean, sd]
            0,0,0,0,0,0,0,0,0,a,3,3 | {"steps":["b"]} | not in the list of steps
            0,0,0,0,0,0,0,0,0,a,3,3 | {not json | is not valid JSON
            """)
    void unusableFilesAreAnsweredWithASentence(String row, String config, String sentence) throws IOException {
        assertThat(run(file("scores.csv", HEADER + row + "\n"), file("config.json", config)))
                .isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains(sentence);
        assertThat(out.size()).isZero();
    }

    @Test
    void contradictingRowsAreAnsweredWithASentence() throws IOException {
        Path config = file("config.json", "{}");
        String row = "0,0,0,0,0,0,0,0,0,a,3,3\n";
        assertThat(run(file("twice.csv", HEADER + row + row), config)).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("scores step a twice");
        assertThat(run(file("two.csv", HEADER + row + "0,1,0,0,0,0,0,0,0,b,3,3\n"), config))
                .isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("two trainees or two supervisors");
        assertThat(run(file("gap.csv", HEADER + row + "1,0,0,5,0,1,0,0,0,b,3,3\n"), config))
                .isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("share a case");
    }

    @Test
    void wrongUseIsAnsweredWithTheUsage() throws IOException {
        assertThat(run("--scores", "x")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("Missing required option: '--config FILE'", "--gradient");
        assertThat(run("--colour")).isEqualTo(2);
        assertThat(run(dir.resolve("none.csv"), file("config.json", "{}"))).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("cannot read");
        assertThat(run("--help")).isZero();
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("--scores FILE");
    }
}
