package org.scrubline.cohort.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.LongStream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Twenty seeds of the invented programme, drawn after the rules were fixed (they were tuned on 9001 to 9040). The marks
 * are those set for the project before the rules were written: 18 of 20, 15 for the plateau and for the break, and at most
 * 2 of 20 for those with nothing planted.
 */
class PlantedSignalsSoak {

    private static final int SEEDS = 20;
    private static final int MOST = 18;
    private static final int HARDER = 15;
    private static final int FALSE = 2;

    private static final Map<String, Integer> FOUND = new LinkedHashMap<>();
    private static final Map<String, Integer> ACCUSED = new LinkedHashMap<>();
    private static final Map<String, Integer> RAISED = new LinkedHashMap<>();

    @BeforeAll
    static void readEverySeed() {
        LongStream.rangeClosed(1, SEEDS).forEach(seed -> {
            ProgrammeRecord programme = PlannedProgramme.of(seed);
            Findings all = Findings.of(programme);
            count(FOUND, PlannedProgramme.found(programme, all));
            count(ACCUSED, PlannedProgramme.accused(all));
            all.trainees().forEach(signal -> RAISED.merge(signal.about() + " " + signal.kind(), 1, Integer::sum));
            all.scorers().forEach(signal -> RAISED.merge(signal.about() + " " + signal.kind(), 1, Integer::sum));
        });
        System.out.println("found of " + SEEDS + ": " + FOUND);
        System.out.println("false of " + SEEDS + ": " + ACCUSED);
        System.out.println("raised of " + SEEDS + ": " + new java.util.TreeMap<>(RAISED));
    }

    private static void count(Map<String, Integer> counts, Map<String, Boolean> seen) {
        seen.forEach((line, yes) -> counts.merge(line, yes ? 1 : 0, Integer::sum));
    }

    @Test
    void eachLineIsFoundInEnoughSeeds() {
        SoftAssertions all = new SoftAssertions();
        FOUND.forEach((line, count) -> all.assertThat(count)
                .as(line)
                .isGreaterThanOrEqualTo(line.startsWith("T02") || line.startsWith("T07") ? HARDER : MOST));
        all.assertAll();
    }

    @Test
    void thoseWithNothingPlantedAreSeldomAccused() {
        assertThat(ACCUSED)
                .hasSize(3)
                .allSatisfy((who, count) -> assertThat(count).as(who).isLessThanOrEqualTo(FALSE));
    }
}
