package org.scrubline.rubric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RubricContentTests {

    static List<Rubric> rubrics() {
        return RubricLibrary.shipped().rubrics();
    }

    @ParameterizedTest
    @MethodSource("rubrics")
    void aRubricComesBackEqualWithTheSameHash(Rubric rubric) {
        RubricContent content = RubricContent.of(rubric);
        Rubric back = content.rubric();

        assertThat(back).isEqualTo(rubric);
        assertThat(RubricContent.of(back)).isEqualTo(content);
    }

    @Test
    void keysAreSortedAndNumbersPlain() {
        Rubric rubric = new Rubric("P", "1.0", "Title", Family.NEEDLING, List.of(step(measure("20.0", "0.50"))));

        // RFC 8785: keys in code-unit order, no white space, numbers as ECMAScript prints them.
        assertThat(RubricContent.of(rubric).json())
                .startsWith("{\"family\":\"NEEDLING\",\"procedure\":\"P\",\"steps\":[{\"coaching\":[],\"code\":\"S\"")
                .contains("\"acceptFrom\":20,\"acceptTo\":null")
                .contains("\"stepSize\":0.5,")
                .endsWith("],\"title\":\"Title\",\"version\":\"1.0\"}");
    }

    @Test
    void theHashIsSha256OfTheText() {
        // FIPS 180-4 digest of this canonical text, computed outside the project with sha256sum.
        Rubric empty = new Rubric("P", "1", "T", Family.NEEDLING, List.of());

        assertThat(RubricContent.of(empty).json())
                .isEqualTo(
                        "{\"family\":\"NEEDLING\",\"procedure\":\"P\",\"steps\":[],\"title\":\"T\",\"version\":\"1\"}");
        assertThat(RubricContent.of(empty).hash())
                .isEqualTo("9070825173d23b120b30ce6607594e7500307cde53a1687a077bfa6bcfe8885c");
    }

    @Test
    void contentThatWasChangedIsNotRead() {
        RubricContent content = RubricContent.of(rubrics().get(0));
        RubricContent changed = new RubricContent(content.json().replace("Wrong eye", "Right eye"), content.hash());

        assertThatIllegalStateException().isThrownBy(changed::rubric).withMessageContaining(content.hash());
    }

    @Test
    void theWayANumberIsWrittenDoesNotChangeTheHash() {
        Rubric one = new Rubric("P", "1", "T", Family.NEEDLING, List.of(step(measure("20", "0.5"))));
        Rubric other = new Rubric("P", "1", "T", Family.NEEDLING, List.of(step(measure("2E+1", "0.50"))));

        assertThat(one).isEqualTo(other);
        assertThat(RubricContent.of(one)).isEqualTo(RubricContent.of(other));
    }

    private static Step step(Measure measure) {
        List<String> levels = List.of("One.", "Two.", "Three.", "Four.", "Five.");
        return new Step(
                "S",
                "Step",
                Phase.ENTRY,
                false,
                "Seen.",
                List.of(measure),
                levels,
                List.of(),
                List.of(),
                List.of(),
                false);
    }

    private static Measure measure(String from, String stepSize) {
        return new Measure(
                "S-M",
                "Measure",
                MeasureKind.NUMBER,
                "mm",
                "20",
                new BigDecimal(from),
                null,
                "20 or more",
                new BigDecimal(stepSize),
                List.of("memory"));
    }
}
