package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.command.StatisticSamples.Outcome;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class StatisticCommandTests {

    @TempDir
    private Path folder;

    private Outcome run(String method, String data) throws IOException {
        return StatisticSamples.run(method, StatisticSamples.object(data), folder);
    }

    @Test
    void theResultIsAFlatObjectInFullPrecision() throws IOException {
        JsonNode result = run("prop_ci", "{\"cases\": [[3, 30]]}").json();
        assertThat(result.valueStream()).allMatch(JsonNode::isNumber);
        assertThat(result.get("3/30.wald.lo").asDouble())
                .isCloseTo(.1 - 1.959963984540054 * Math.sqrt(.1 * .9 / 30), within(1e-16));
    }

    @Test
    void theSameFileGivesTheSameBytes() throws IOException {
        String data = "{\"cases\": [[3, 30], [0, 10]], \"confidence\": 0.9}";
        assertThat(run("prop_ci", data).out()).isEqualTo(run("prop_ci", data).out());
    }

    @Test
    void theResultCanGoToAFile() throws IOException {
        Path data = Files.writeString(folder.resolve("in.json"), "{\"data\": {\"y\": [2, 1]}}");
        Path target = folder.resolve("out.json");
        Outcome outcome = StatisticSamples.run(List.of("isotonic", data.toString(), "--out", target.toString()));
        assertThat(outcome.code()).isEqualTo(Commands.FINE);
        assertThat(outcome.out()).isEmpty();
        assertThat(JsonMapper.shared()
                        .readTree(Files.readString(target))
                        .get("fit.1")
                        .asDouble())
                .isEqualTo(1.5);
    }

    @Test
    void anUndefinedStatisticIsNullWithANote() throws IOException {
        JsonNode result = run("icc", "{\"ratings\": [[3, 3], [3, 3]]}").json();
        assertThat(result.get("ICC1").isNull()).isTrue();
        assertThat(result.get("BMS").asDouble()).isZero();
        assertThat(result.get("note").asString()).contains("ICC1 is undefined because there is no variance");
    }

    @Test
    void helpListsTheMethods() {
        Outcome outcome = StatisticSamples.run(List.of("--help"));
        assertThat(outcome.code()).isZero();
        assertThat(outcome.out()).contains("METHOD FILE.json", "alpha, angoff", "sprt_limits");
    }

    @Test
    void wrongUseIsOneSentenceAndExitCodeTwo() throws IOException {
        Path text = Files.writeString(folder.resolve("text.json"), "no json");
        Path bare = Files.writeString(folder.resolve("bare.json"), "{\"y\": [1]}");
        Path notANumber = Files.writeString(folder.resolve("nan.json"), "{\"data\": {\"y\": [NaN]}}");
        assertWrongUse(List.of("magic", bare.toString()), "no method named magic");
        assertWrongUse(List.of("isotonic", folder.resolve("none.json").toString()), "none.json cannot be read");
        assertWrongUse(List.of("isotonic", folder.toString()), folder + " cannot be read");
        assertWrongUse(List.of("isotonic", text.toString()), "is not JSON");
        assertWrongUse(List.of("isotonic", notANumber.toString()), "is not JSON");
        assertWrongUse(List.of("isotonic", bare.toString()), "no object named \"data\"");
    }

    @Test
    void aResultThatCannotBeWrittenIsSaid() throws IOException {
        Path data = Files.writeString(folder.resolve("in.json"), "{\"data\": {\"y\": [2, 1]}}");
        String target = folder.resolve("none").resolve("out.json").toString();
        assertWrongUse(List.of("isotonic", data.toString(), "--out", target), target + " cannot be written");
    }

    private static void assertWrongUse(List<String> args, String message) {
        Outcome outcome = StatisticSamples.run(args);
        assertThat(outcome.code()).isEqualTo(Commands.WRONG_USE);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().strip()).contains(message).hasLineCount(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "isotonic",
                "isotonic data.json --to x",
                "isotonic data.json more.json",
                "isotonic d.json --out"
            })
    void anUnfinishedLineIsAnsweredWithTheUsage(String line) {
        Outcome outcome = StatisticSamples.run(line.isEmpty() ? List.of() : List.of(line.split(" ")));
        assertThat(outcome.code()).isEqualTo(Commands.WRONG_USE);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err())
                .startsWith("statistic: ")
                .contains("statistic [--help] [--out FILE] METHOD FILE.json");
    }

    @Test
    void badDataAreNamed() throws IOException {
        assertThat(run("icc", "{\"ratings\": [[3, 3], [3]]}").err()).contains("they must agree");
        assertThat(run("icc", "{\"ratings\": [[3], [4]]}").err()).contains("at least 2 columns");
        assertThat(run("icc", "{\"ratings\": [[3, null], [4, 4]]}").err()).contains("must be a number, but is null");
        assertThat(run("icc", "{\"scores\": []}").err()).contains("no \"ratings\"");
        assertThat(run("prop_ci", "{\"cases\": [[3, 2]]}").err()).contains("from 0 to 2, but is 3");
        assertThat(run("prop_ci", "{\"cases\": [[3.5, 7]]}").err()).contains("whole number");
        assertThat(run("clm", "{\"y\": [1, 1, 1]}").err()).contains("one category");
        assertThat(run("kappa_table", "{\"table\": [[0.5, 0.1], [0.1, 0.3]]}").err())
                .contains("\"n\"");
    }

    @ParameterizedTest
    @CsvSource({
        "2, 2",
        "0.05, 0.05",
        "100, 100",
        "0.00001, 1e-05",
        "0.1234567, 0.123457",
        "1234567, 1.23457e+06",
        "-1.5, -1.5",
        "0, 0",
        "0.30000000000000004, 0.3",
        "999999.7, 1e+06"
    })
    void numbersInKeysHaveAtMostSixDigits(double value, String key) {
        assertThat(StatisticResult.inKey(value)).isEqualTo(key);
    }

    @Test
    void ownCustomWeightsMayBeAgreementWeights() throws IOException {
        String table = "{\"table\": [[20, 5, 1], [3, 12, 4], [0, 2, 9]], ";
        JsonNode custom = run(
                        "kappa_table", table + "\"agreement_weights\": [[1, 0.75, 0], [0.75, 1, 0.75], [0, 0.75, 1]]}")
                .json();
        JsonNode named =
                run("kappa_table", table + "\"weights\": [\"quadratic\"]}").json();
        assertThat(custom.get("custom.kappa")).isEqualTo(named.get("quadratic.kappa"));
        assertThat(custom.get("custom.se")).isEqualTo(named.get("quadratic.se"));
    }

    @Test
    void aChartThatNeverSignalsHasNoRunLength() throws IOException {
        JsonNode result = run("bernoulli_arl", "{\"p0\": 0.1, \"p1\": 0.2, \"h\": [2], \"true_failure\": [0]}")
                .json();
        assertThat(result.get("ARL.h2.p0").isNull()).isTrue();
        assertThat(result.get("note").asString()).contains("no signal can occur");
    }

    @Test
    void oneStartThatFailsIsNotedAndTheOtherIsUsed() throws IOException {
        JsonNode result = run(
                        "nls",
                        "{\"model\": \"exp_rise\", \"x\": [1, 2, 3, 4, 5], \"y\": [2, 3.2, 3.8, 4.3, 4.6],"
                                + " \"starts\": [[5, 0.5], [5, 900]]}")
                .json();
        assertThat(result.get("b1").asDouble()).isBetween(4.5, 5.5);
        assertThat(result.get("note").asString()).isNotBlank();
    }
}
