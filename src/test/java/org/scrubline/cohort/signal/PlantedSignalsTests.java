package org.scrubline.cohort.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The invented programme with one seed: what its scenario plants is found. The rules see levels, times, bands and who
 * scored whom, never what was planted. Twenty other seeds, with the rates, are in {@code PlantedSignalsSoak}.
 */
class PlantedSignalsTests {

    /** One of the seeds the rules were tuned on. */
    private static final long SEED = 9_001;

    private static ProgrammeRecord programme = PlannedProgramme.of(SEED);
    private static Findings findings = Findings.of(programme);

    @BeforeAll
    static void theProgrammeIsWhole() {
        assertThat(programme.forms()).hasSizeGreaterThan(800);
    }

    @Test
    void whatWasPlantedIsFound() {
        assertThat(PlannedProgramme.found(programme, findings))
                .allSatisfy((line, found) -> assertThat(found).as(line).isTrue());
    }

    @Test
    void thoseWithoutAnythingPlantedAreLeftAlone() {
        assertThat(PlannedProgramme.accused(findings)).isEqualTo(Map.of("T01", false, "T06", false, "S01", false));
    }

    @Test
    void everySignalRestsOnSheetsOfItsPersonOrSaysThereAreNone() {
        assertThat(findings.trainees())
                .allSatisfy(signal -> assertThat(programme.forms().stream()
                                .filter(form -> signal.forms().contains(form.id()))
                                .map(SignedForm::trainee)
                                .distinct())
                        .isSubsetOf(signal.about()));
        assertThat(findings.scorers()).allSatisfy(signal -> {
            assertThat(signal.forms()).isNotEmpty();
            assertThat(programme.forms().stream()
                            .filter(form -> signal.forms().contains(form.id()))
                            .map(SignedForm::scorer)
                            .distinct())
                    .containsExactly(signal.about());
        });
    }
}
