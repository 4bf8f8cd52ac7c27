package org.scrubline.rubric.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

class RubricReaderTests {

    private static final String GOOD = """
            procedure: DRILL
            version: "1.0"
            title: Drill
            family: needling
            steps:
              - code: A1
                name: First
                phase: entry
                sees: Something.
                measures:
                  - code: WIDTH
                    name: Width
                    kind: number
                    unit: mm
                    target: 2–3
                    accept: {from: 1.5, to: 3.5}
                    stepSize: 0.5
                levels:
                  1: One.
                  2: Two.
                  3: Three.
                  4: Four.
                  5: Five.
                hazards: [Slip]
                coaching: [Slow down.]
            """;

    @Test
    void aGoodFileIsRead() {
        Rubric rubric = read(GOOD);
        Measure width = rubric.step("A1").measures().get(0);

        assertThat(rubric.family()).isEqualTo(Family.NEEDLING);
        assertThat(rubric.step("A1").critical()).isFalse();
        assertThat(rubric.step("A1").sentence(4)).isEqualTo("Four.");
        assertThat(width.code()).isEqualTo("A1-WIDTH");
        assertThat(width.kind()).isEqualTo(MeasureKind.NUMBER);
        assertThat(width.acceptTo()).isEqualByComparingTo("3.5");
        assertThat(width.accepted()).isEqualTo("2–3");
        assertThat(width.sources()).containsExactly("common-practice");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            family: needling              | family: knitting               | drill.yaml, key family: "knitting" is not one of trabeculectomy, drainage-device
            title: Drill                  | titel: Drill                   | drill.yaml, key title: is missing
            title: Drill                  | '{title: Drill'                | drill.yaml, line
            sees: Something.              | sees: "  "                     | drill.yaml, step A1, key sees: must be text
            sees: Something.              | sees: 7                        | drill.yaml, step A1, key sees: must be text, found 7
            phase: entry                  | phase: entrance                | drill.yaml, step A1, key phase: "entrance" is not one of preparation, exposure
            name: First                   | nickname: First                | drill.yaml, step A1, key name: is missing
            hazards: [Slip]               | hazards: []                    | drill.yaml, step A1, key hazards: must be a list with at least one entry
            3: Three.                     | 6: Six.                        | drill.yaml, step A1, levels, key 3: is missing
            3: Three.                     | 3:                             | drill.yaml, step A1, levels, key 3: is missing
            kind: number                  | kind: yes-no                   | drill.yaml, step A1, measure WIDTH, key unit: has no place in a yes-no measure
            kind: number                  | kind: length                   | drill.yaml, step A1, measure WIDTH, key kind: "length" is not one of number, count
            unit: mm                      | units: mm                      | drill.yaml, step A1, measure WIDTH, key units: is not known here
            stepSize: 0.5                 | stepSize: 0                    | drill.yaml, step A1, measure WIDTH, key stepSize: must be more than 0
            stepSize: 0.5                 | stepSize: half                 | drill.yaml, step A1, measure WIDTH, key stepSize: must be a number
            '{from: 1.5, to: 3.5}'        | '{from: 3.5, to: 1.5}'         | drill.yaml, step A1, measure WIDTH, key accept: runs from 3.5 down to 1.5
            '{from: 1.5, to: 3.5}'        | '{}'                           | drill.yaml, step A1, measure WIDTH, key accept: needs from, to or both
            '{from: 1.5, to: 3.5}'        | '{from: 1.5, till: 3.5}'       | drill.yaml, step A1, measure WIDTH, accept, key till: is not known here
            """)
    void aFaultIsNamedByFileStepAndKey(String good, String bad, String message) {
        assertThat(GOOD).contains(good);

        assertThatThrownBy(() -> read(GOOD.replace(good, bad)))
                .isInstanceOf(RubricFormatException.class)
                .hasMessageStartingWith(message);
    }

    @Test
    void anUnknownKeyOfAStepIsNamed() {
        assertThatThrownBy(() -> read(GOOD.replace("    name: First\n", "    name: First\n    colour: red\n")))
                .hasMessage("drill.yaml, step A1, key colour: is not known here");
    }

    @Test
    void aSixthLevelIsRefused() {
        assertThatThrownBy(() -> read(GOOD.replace("      5: Five.\n", "      5: Five.\n      6: Six.\n")))
                .hasMessage("drill.yaml, step A1, levels, key 6: is not known here");
    }

    @Test
    void criticalMustBeTrueOrFalse() {
        assertThatThrownBy(() -> read(GOOD.replace("    name: First\n", "    name: First\n    critical: maybe\n")))
                .hasMessage("drill.yaml, step A1, key critical: must be true or false, found \"maybe\"");
    }

    @Test
    void aKeyWrittenTwiceIsRefused() {
        assertThatThrownBy(() -> read(GOOD.replace("title: Drill\n", "title: Drill\ntitle: Other\n")))
                .isInstanceOf(RubricFormatException.class)
                .hasMessageStartingWith("drill.yaml, line");
    }

    @Test
    void aStepCodeUsedTwiceIsRefused() {
        String step = GOOD.substring(GOOD.indexOf("  - code: A1"));

        assertThatThrownBy(() -> read(GOOD + step)).hasMessage("drill.yaml, step A1, key code: is used twice");
    }

    @Test
    void aStepTakenTwiceIsRefused() {
        assertThatThrownBy(() -> readWithGood(taking("[A1, A1]", "DRILL")))
                .hasMessage("other.yaml, step A1, key code: is used twice");
    }

    @Test
    void aTakenStepIsTheSameStep() {
        Rubric other = readWithGood(taking("[A1]", "DRILL"));

        assertThat(other.steps()).containsExactly(read(GOOD).step("A1"));
    }

    @Test
    void aTakenStepCanWaitForConversion() {
        Rubric other = readWithGood(taking("[A1]", "DRILL") + "    onlyWhenConverted: true\n");

        assertThat(other.step("A1").onlyWhenConverted()).isTrue();
    }

    @Test
    void aMeasureUsedTwiceIsRefused() {
        String twice = GOOD.replace("    levels:\n", "      - take: [A1]\n        from: DRILL\n    levels:\n");

        assertThatThrownBy(() -> read(twice)).hasMessage("drill.yaml, step A1, measure, key code: is missing");
        assertThatThrownBy(() -> readWithGood(stepTakingMeasures("[A1, A1]")))
                .hasMessage("other.yaml, step B1, key measures: B1-WIDTH is used twice");
    }

    @Test
    void takenMeasuresGetTheCodeOfTheirNewStep() {
        assertThat(readWithGood(stepTakingMeasures("[A1]")).step("B1").measures())
                .extracting(Measure::code)
                .containsExactly("B1-WIDTH");
    }

    @Test
    void aTakeThatLeadsNowhereIsRefused() {
        assertThatThrownBy(() -> readWithGood(taking("[A1]", "NOTHING")))
                .hasMessage("other.yaml, steps, key from: there is no procedure NOTHING");
        assertThatThrownBy(() -> readWithGood(taking("[A9]", "DRILL")))
                .hasMessage("other.yaml, steps, key take: drill.yaml writes out no step A9");
        assertThatThrownBy(() -> readWithGood(taking("[A1]", "DRILL") + "    colour: red\n"))
                .hasMessage("other.yaml, steps, key colour: is not known here");
    }

    @Test
    void aProcedureInTwoFilesIsRefused() {
        Map<String, String> files = Map.of("drill.yaml", GOOD, "copy.yaml", GOOD);

        assertThatThrownBy(() -> new RubricReader(files)).hasMessageContaining("DRILL has another file already");
    }

    @Test
    void theExampleOfTheDocumentationIsRead() throws IOException {
        String page = Files.readString(Path.of("docs/rubric-format.md"));
        String example = page.substring(page.indexOf("```yaml\n") + 8, page.indexOf("\n```\n"));
        String fornix = Files.readString(Path.of("src/main/resources/rubrics/trab-fornix.yaml"));
        Map<String, String> files = new LinkedHashMap<>();
        files.put("example", example);
        files.put("trab-fornix.yaml", fornix);

        Rubric rubric = new RubricReader(files).read().get(0);

        assertThat(rubric.steps()).extracting(Step::code).containsExactly("TF08", "WL01");
        assertThat(rubric.step("WL01").measures())
                .extracting(Measure::code)
                .containsExactly("WL01-THICKNESS", "WL01-REACH", "WL01-HOLES", "WL01-TIME");
    }

    private static String stepTakingMeasures(String steps) {
        String step = GOOD.replace("DRILL", "OTHER").replace("code: A1", "code: B1");
        int measures = step.indexOf("      - code: WIDTH");
        int levels = step.indexOf("    levels:");
        return step.substring(0, measures) + "      - take: " + steps + "\n        from: DRILL\n"
                + step.substring(levels);
    }

    private static String taking(String steps, String from) {
        return """
                procedure: OTHER
                version: "1.0"
                title: Other
                family: needling
                steps:
                  - take: %s
                    from: %s
                """.formatted(steps, from);
    }

    private static Rubric readWithGood(String other) {
        Map<String, String> files = new LinkedHashMap<>();
        files.put("other.yaml", other);
        files.put("drill.yaml", GOOD);
        return new RubricReader(files).read().get(0);
    }

    private static Rubric read(String text) {
        return new RubricReader(Map.of("drill.yaml", text)).read().get(0);
    }
}
