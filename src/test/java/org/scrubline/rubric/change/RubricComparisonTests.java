package org.scrubline.rubric.change;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.change.RubricChange.Kind;
import org.scrubline.rubric.format.RubricReader;
import org.scrubline.rubric.format.RubricReading;

class RubricComparisonTests {

    private static final String STEP = """
              - code: CODE
                name: Lift the flap CODE
                phase: flap
                sees: Something.
                measures:
                  - {code: WIDTH, name: Width, kind: number, unit: mm, target: 2–3, accept: {from: 2, to: 3}, stepSize: 1}
                levels: {1: One., 2: Two., 3: Three., 4: Four., 5: Five.}
                hazards: [Slip]
                coaching: [Slow down.]
            """;
    private static final String HEAD = """
            procedure: DRILL
            version: "1.0"
            title: Drill
            family: needling
            steps:
            """;
    private static final String BEFORE = HEAD + step("A1") + step("A2") + step("A3");

    private static String step(String code) {
        return STEP.replace("CODE", code);
    }

    @Test
    void theSameRubricChangesNothing() {
        assertThat(RubricComparison.between(read(BEFORE), read(BEFORE.replace("1.0", "2.0"))))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            title: Drill            | title: Practice            | TITLE             |    | Drill             | Practice
            Lift the flap A2        | Lift the flap A2 slowly    | STEP_RENAMED      | A2 | Lift the flap A2  | Lift the flap A2 slowly
            Something.              | Something else.            | SEES              | A1 | Something.        | Something else.
            4: Four.                | 4: Four again.             | LEVEL             | A1 | Four.             | Four again.
            hazards: [Slip]         | hazards: [Slip, Fall]      | HAZARDS           | A1 | Slip              | Slip · Fall
            coaching: [Slow down.]  | coaching: [Stop.]          | COACHING          | A1 | Slow down.        | Stop.
            hazards: [Slip]         | 'hazards: [Slip]\n    sources: [memory]' | SOURCES | A1 | '' | memory
            phase: flap             | phase: closure             | STEP_MOVED        | A1 | FLAP              | CLOSURE
            {from: 2, to: 3}        | {from: 2}                  | MEASURE_TOLERANCE | A1 | 2–3 mm            | 2–… mm
            stepSize: 1             | stepSize: 2                | MEASURE_CHANGED   | A1 | Width             | Width
            phase: flap             | 'phase: flap\n    critical: true' | CRITICAL_NOW | A1 | ''             | ''
            phase: flap             | 'phase: flap\n    onlyWhenConverted: true' | ONLY_WHEN_CONVERTED | A1 | '' | ''
            """)
    void aChangeIsNamed(String good, String other, Kind kind, String step, String before, String after) {
        assertThat(BEFORE).contains(good);
        String changed = BEFORE.replaceFirst(Pattern.quote(good), Matcher.quoteReplacement(other.replace("\\n", "\n")));

        assertThat(RubricComparison.between(read(BEFORE), read(changed)))
                .singleElement()
                .satisfies(change -> {
                    assertThat(change.kind()).isEqualTo(kind);
                    assertThat(change.step()).isEqualTo(step == null ? "" : step);
                    assertThat(change.before()).isEqualTo(before);
                    assertThat(change.after()).isEqualTo(after);
                });
    }

    @Test
    void whatBecameCriticalCanStopBeingSo() {
        Rubric critical = read(BEFORE.replaceFirst("phase: flap", "phase: flap\n    critical: true"));

        assertThat(kinds(critical, read(BEFORE))).containsExactly("A1 CRITICAL_NO_MORE");
    }

    @Test
    void stepsAreNewGoneAndMovedByTheirCodeAlone() {
        assertThat(kinds(read(BEFORE), read(BEFORE + step("B1")))).containsExactly("B1 STEP_NEW");
        assertThat(kinds(read(BEFORE + step("B1")), read(BEFORE))).containsExactly("B1 STEP_GONE");
        Rubric moved = read(HEAD + step("A3") + step("A1") + step("A2"));
        assertThat(kinds(read(BEFORE), moved)).containsExactly("A3 STEP_MOVED");
        Rubric without = read(HEAD + step("A1") + step("A3"));
        assertThat(kinds(read(BEFORE), without)).containsExactly("A2 STEP_GONE");
    }

    @Test
    void measuresComeAndGo() {
        int measures = BEFORE.indexOf("    measures:");
        String without = BEFORE.substring(0, measures) + BEFORE.substring(BEFORE.indexOf("    levels:"));

        assertThat(kinds(read(BEFORE), read(without))).containsExactly("A1 MEASURE_GONE");
        assertThat(kinds(read(without), read(BEFORE))).containsExactly("A1 MEASURE_NEW");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            Lift the flap A2 gently      | false
            The flap A2 lift             | false
            Close the wound              | true
            Lift sutures                 | true
            """)
    void aNameThatSharesLessThanHalfItsWordsRaisesADoubt(String name, boolean doubt) {
        List<String> kinds = kinds(read(BEFORE), read(BEFORE.replace("Lift the flap A2", name)));

        assertThat(kinds.contains("A2 MEANING_IN_DOUBT")).isEqualTo(doubt);
        assertThat(kinds).contains("A2 STEP_RENAMED");
    }

    private static List<String> kinds(Rubric before, Rubric after) {
        return RubricComparison.between(before, after).stream()
                .map(change -> change.step() + " " + change.kind())
                .toList();
    }

    private static Rubric read(String text) {
        RubricReading reading = RubricReader.check("drill", text);
        assertThat(reading.faults()).isEmpty();
        return Objects.requireNonNull(reading.rubric());
    }
}
