package org.scrubline.demo.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.scoring.reliability.SameWork;

/** What the films of the invented programme say of the habits planted in its supervisors, for several seeds. */
class ClipDrawTests {

    private static final DemoRubrics RUBRICS = new DemoRubrics(RubricLibrary.shipped());

    static LongStream seeds() {
        return LongStream.concat(LongStream.of(DemoPlan.USUAL_SEED), LongStream.rangeClosed(1, 20));
    }

    @Test
    void twiceSixFilmsAreScoredByAllNine() {
        List<PlannedClip> clips = ClipDraw.draw(DemoPlan.USUAL_SEED, RUBRICS);
        assertThat(clips).extracting(PlannedClip::month).containsExactly(2, 2, 2, 2, 2, 2, 14, 14, 14, 14, 14, 14);
        assertThat(clips).extracting(PlannedClip::reference).doesNotHaveDuplicates();
        assertThat(clips)
                .allSatisfy(clip -> assertThat(clip.scores())
                        .hasSize(DemoCast.SUPERVISORS.size())
                        .allSatisfy((scorer, levels) -> assertThat(levels.values())
                                .hasSizeGreaterThan(15)
                                .allSatisfy(level -> assertThat(level).isBetween(1, 5))));
        assertThat(ClipDraw.draw(DemoPlan.USUAL_SEED, RUBRICS)).isEqualTo(clips);
        assertThat(ClipDraw.draw(1, RUBRICS)).isNotEqualTo(clips);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theStrictAndTheLenientScorerComeOutOnTheirSides(long seed) {
        SameWork same = same(ClipDraw.draw(seed, RUBRICS));
        assertThat(difference(same, "S02")).isBetween(-1.1, -.25);
        assertThat(difference(same, "S03")).isBetween(.2, 1.1);
        assertThat(Math.abs(difference(same, "S01"))).isLessThan(.35);
        assertThat(same.alpha().orElseThrow()).isBetween(.2, .9);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void whoScoresByTheWholeImpressionDiffersLittleBetweenTheStepsOfAFilm(long seed) {
        List<PlannedClip> clips = ClipDraw.draw(seed, RUBRICS);
        assertThat(spread(clips, "S04")).isLessThan(.75 * spread(clips, "S01"));
        assertThat(spread(clips, "S05")).as("a narrow range does too").isLessThan(.75 * spread(clips, "S01"));
    }

    private static double difference(SameWork same, String scorer) {
        return Objects.requireNonNull(same.difference(scorer)).mean();
    }

    private static SameWork same(List<PlannedClip> clips) {
        List<SameWork.Rating> ratings = new ArrayList<>();
        clips.forEach(clip -> clip.scores()
                .forEach((scorer, levels) -> levels.forEach(
                        (step, level) -> ratings.add(new SameWork.Rating(scorer, clip.reference(), step, level)))));
        return new SameWork(ratings);
    }

    /** Standard deviation between the steps of a film, averaged over the films. */
    private static double spread(List<PlannedClip> clips, String scorer) {
        return clips.stream()
                .map(clip -> clip.scores().getOrDefault(scorer, Map.of()).values())
                .mapToDouble(ClipDrawTests::spread)
                .average()
                .orElseThrow();
    }

    private static double spread(Collection<Integer> levels) {
        double mean = levels.stream().mapToInt(Integer::intValue).average().orElseThrow();
        return Math.sqrt(levels.stream()
                .mapToDouble(level -> Math.pow(level - mean, 2))
                .average()
                .orElseThrow());
    }
}
