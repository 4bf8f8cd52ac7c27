package org.scrubline.rubric.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;

/** A rubric as text and back, and every fault of a text with its line. */
class RubricTextTests {

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

    static Stream<Rubric> shipped() {
        return RubricLibrary.shipped().rubrics().stream();
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void aRubricWrittenIsTheSameRubricRead(Rubric rubric) {
        RubricReading reading = RubricReader.check("draft", RubricWriter.write(rubric));

        assertThat(reading.faults()).isEmpty();
        assertThat(reading.rubric()).isEqualTo(rubric);
    }

    @Test
    void everyFaultIsNamedWithItsLine() {
        String bad = GOOD.replace("title: Drill\n", "titel: Drill\n")
                .replace("phase: entry", "phase: entrance")
                .replace("kind: number", "kind: length")
                .replace("3: Three.", "3:")
                .replace("coaching: [Slow down.]", "coaching: []\n    colour: red");

        assertThat(RubricReader.check("draft", bad).rubric()).isNull();
        assertThat(lines(bad))
                .containsExactly(
                        "1 draft, key title: is missing",
                        "3 draft, key titel: is not known here",
                        "8 draft, step A1, key phase: \"entrance\" is not one of preparation, exposure, antimetabolite,"
                                + " flap, entry, closure, final-checks",
                        "13 draft, step A1, measure WIDTH, key kind: \"length\" is not one of number, count, yes-no,"
                                + " duration",
                        "21 draft, step A1, levels, key 3: is missing",
                        "25 draft, step A1, key coaching: must be a list with at least one entry",
                        "26 draft, step A1, key colour: is not known here");
    }

    @Test
    void aTextThatIsNoYamlNamesTheLine() {
        List<RubricFault> faults = RubricReader.check("draft", GOOD.replace("title: Drill", "title: {Drill"))
                .faults();

        assertThat(faults).hasSize(1);
        assertThat(faults.get(0).message()).contains("cannot be read");
        assertThat(faults.get(0).line()).isBetween(3, 5);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "# only a remark",
                "steps",
                "7",
                "- a",
                "steps: 7",
                "steps: [7, null, [], {}]",
                "steps: [{take: [A], from: B}, {take: 7}]",
                "procedure: [\"a\"]",
                "a: &x [1]\nb: *x",
                "--- \n--- \n",
                "? {a: b}\n: c",
                "title: \"\\u0000\"",
                "title: \"\\ud800\"",
                "\t- tab"
            })
    void aHostileTextHasFaultsAndNoRubric(String text) {
        RubricReading reading = RubricReader.check("draft", text);

        assertThat(reading.rubric()).isNull();
        assertThat(reading.faults()).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e999999999", "0.00000000001", "99999999999", ".nan", ".inf", "1e-2147483647"})
    void aNumberNobodyCouldShowIsRefused(String number) {
        assertThat(lines(GOOD.replace("stepSize: 0.5", "stepSize: " + number)))
                .isNotEmpty()
                .allMatch(line -> line.contains("stepSize") || line.contains("cannot be read"));
    }

    @Test
    void aCharacterThatCannotBeShownIsRefused() {
        assertThat(lines(GOOD.replace("name: First", "name: \"Fi\\0rst\"")))
                .containsExactly("7 draft, step A1, key name: holds a character that cannot be shown");
        assertThat(lines(GOOD.replace("sees: Something.", "sees: " + "x".repeat(1001))))
                .containsExactly("9 draft, step A1, key sees: is longer than 1000 characters");
        assertThat(lines(GOOD.replace("code: A1", "code: <b>")))
                .anyMatch(line -> line.startsWith("6 draft, step <b>, key code: must begin with a capital letter"));
    }

    @Test
    void thousandsOfBracketsAreOneFault() {
        assertThat(RubricReader.check("draft", "[".repeat(60_000)).faults()).hasSize(1);
        assertThat(RubricReader.check("draft", "a: ".concat("{b: ".repeat(10_000)))
                        .faults())
                .hasSize(1);
    }

    @Test
    void aStepCodeUsedTwiceIsNamedAtItsSecondPlace() {
        String twice = GOOD + GOOD.substring(GOOD.indexOf("  - code: A1"));

        assertThat(lines(twice)).containsExactly("26 draft, step A1, key code: is used twice");
    }

    @Test
    void theShippedTextCanBeChangedByHand() {
        Rubric fornix = RubricLibrary.shipped().rubric(Procedures.TRAB_FORNIX);
        String text = RubricWriter.write(fornix);

        assertThat(text).contains("version: \"1.0\"", "  - code: TF01", "family: trabeculectomy");
        assertThat(text.length()).isLessThan(64 * 1024);
    }

    private static List<String> lines(String text) {
        return RubricReader.check("draft", text).faults().stream()
                .map(fault -> fault.line() + " " + fault.message())
                .toList();
    }
}
