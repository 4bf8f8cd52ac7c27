package org.scrubline.rubric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.NoSuchElementException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CodeListTests {

    private static final EventCatalogue EVENTS = RubricLibrary.shipped().events();
    private static final ComplexityFactors COMPLEXITY = RubricLibrary.shipped().complexity();

    @Test
    void theBlockingEventsAreTheElevenOfTheList() {
        assertThat(EVENTS.kinds().stream().filter(EventKind::blocking).map(EventKind::code))
                .containsExactly(
                        "WRONG_EYE",
                        "WRONG_DRUG",
                        "SPONGE_RETAINED",
                        "VITREOUS_LOSS",
                        "LENS_DAMAGE",
                        "CHOROIDAL_HAEMORRHAGE",
                        "GLOBE_PERFORATION",
                        "FLAP_AMPUTATION",
                        "BUTTONHOLE_UNREPAIRED",
                        "LEAK_AT_END",
                        "UNPLANNED_CONVERSION");
    }

    @ParameterizedTest
    @CsvSource({"SAFETY, true", "TEACHING, false", "TIME, false"})
    void aTakeoverBlocksOnlyForSafety(TakeoverReason reason, boolean blocks) {
        assertThat(EVENTS.blocks(EventCatalogue.TAKEOVER, reason)).isEqualTo(blocks);
        assertThat(EVENTS.kind(EventCatalogue.TAKEOVER).needsReason()).isTrue();
    }

    @Test
    void otherEventsBlockByTheirEntryAlone() {
        assertThat(EVENTS.blocks("VITREOUS_LOSS", null)).isTrue();
        assertThat(EVENTS.blocks("TEAR_REPAIRED", null)).isFalse();
        assertThat(EVENTS.blocks("TEAR_REPAIRED", TakeoverReason.SAFETY)).isFalse();
        assertThatThrownBy(() -> EVENTS.blocks("NOTHING", null)).isInstanceOf(NoSuchElementException.class);
    }

    @ParameterizedTest
    @CsvSource({"0, A", "1, B", "2, B", "3, C", "4, C", "5, D", "12, D"})
    void pointsGiveTheBand(int points, Band band) {
        assertThat(Band.ofPoints(points)).isEqualTo(band);
    }

    @Test
    void negativePointsAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> Band.ofPoints(-1));
    }

    @Test
    void onlyTechnicalPointsReachTheBand() {
        assertThat(COMPLEXITY.band(List.of())).isEqualTo(Band.A);
        assertThat(COMPLEXITY.band(List.of("ONLY_EYE"))).isEqualTo(Band.A);
        assertThat(COMPLEXITY.band(List.of("UVEITIC"))).isEqualTo(Band.B);
        assertThat(COMPLEXITY.band(List.of("UVEITIC", "ANTICOAGULANT"))).isEqualTo(Band.C);
        assertThat(COMPLEXITY.band(List.of("NEOVASCULAR", "UVEITIC"))).isEqualTo(Band.D);
        assertThat(COMPLEXITY.band(List.of("YOUNG", "YOUNG", "YOUNG"))).isEqualTo(Band.B);
    }

    @Test
    void theThreeAxesStayApart() {
        ComplexityFactor myopia = COMPLEXITY.factor("MYOPIA");

        assertThat(COMPLEXITY.factors()).hasSize(13);
        assertThat(myopia.technicalPoints()).isEqualTo(2);
        assertThat(myopia.healingPoints()).isEqualTo(1);
        assertThat(myopia.stakes()).isTrue();
        assertThat(COMPLEXITY.factors().stream()
                        .filter(ComplexityFactor::stakes)
                        .map(ComplexityFactor::code))
                .containsExactly("ANTICOAGULANT", "MYOPIA", "ANGLE_CLOSURE", "HIGH_PRESSURE", "ONLY_EYE");
    }
}
