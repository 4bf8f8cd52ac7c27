package org.scrubline.cohort.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Twenty seeds of the invented programme, 101 to 120, drawn after the rules were fixed. They were tuned on 9001 to 9040;
 * seeds 1 to 20 found the plateau rule of that time wanting, and its successor was made on 21 to 80. The marks are those set for the project before the rules were written: 18 of 20, 15 for the plateau and for the break, and at most
 * 2 of 20 for those with nothing planted.
 */
class PlantedSignalsSoak {

    /** Other seeds, to tune on or to repeat the count: {@code -Dscrubline.seeds.first=9001}. */
    private static final long FIRST = Long.getLong("scrubline.seeds.first", 101);

    private static final int SEEDS = 20;
    private static final int MOST = 18;
    private static final int HARDER = 15;
    private static final int FALSE = 2;

    private static final Map<String, Integer> FOUND = new LinkedHashMap<>();
    private static final Map<String, Integer> ACCUSED = new LinkedHashMap<>();
    private static final Map<String, Integer> RAISED = new LinkedHashMap<>();
    private static final Map<Signal.Kind, Integer> WITHOUT_CAUSE = new EnumMap<>(Signal.Kind.class);

    @BeforeAll
    static void readEverySeed() {
        LongStream.range(FIRST, FIRST + SEEDS).forEach(seed -> {
            ProgrammeRecord programme = PlannedProgramme.of(seed);
            Findings all = Findings.of(programme);
            count(FOUND, PlannedProgramme.found(programme, all));
            count(ACCUSED, PlannedProgramme.accused(all));
            PlannedProgramme.withoutCause(all).forEach((kind, count) -> WITHOUT_CAUSE.merge(kind, count, Integer::sum));
            all.trainees().forEach(signal -> RAISED.merge(signal.about() + " " + signal.kind(), 1, Integer::sum));
            all.scorers().forEach(signal -> RAISED.merge(signal.about() + " " + signal.kind(), 1, Integer::sum));
        });
        System.out.println("found of " + SEEDS + ": " + FOUND);
        System.out.println("false of " + SEEDS + ": " + ACCUSED);
        System.out.println("raised of " + SEEDS + ": " + new TreeMap<>(RAISED));
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

    /** Only for the seeds the pages speak of. */
    @Test
    void thePagesPrintTheRatesMeasuredHere() {
        SoftAssertions all = new SoftAssertions();
        WITHOUT_CAUSE.forEach((kind, count) -> {
            all.assertThat(kind.falseAlarms()).as(kind.name()).isEqualTo(count);
            all.assertThat(kind.without()).as(kind.name()).isEqualTo(SEEDS * PlannedProgramme.without(kind));
        });
        all.assertAll();
        assertThat(WITHOUT_CAUSE).hasSize(7);
    }
}
