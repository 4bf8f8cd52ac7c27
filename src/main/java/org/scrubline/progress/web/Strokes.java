package org.scrubline.progress.web;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.StepState;
import org.scrubline.progress.CountedCase;
import org.scrubline.progress.StepProgress;
import org.scrubline.progress.StepScore;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.SignedSheet;

/**
 * What the strokes under the curve show: the levels of one step, or of each case the share of scored steps at 4 or 5.
 *
 * @param step the step chosen; null for the share
 */
record Strokes(@Nullable StepProgress step) {

    /** Strokes of one case, each as a part of the full height, 0 to 1. */
    List<Double> heights(CountedCase counted) {
        if (step == null) {
            int scored = (int) levels(counted).count();
            return scored == 0 ? List.of() : List.of((double) high(counted) / scored);
        }
        return stepLevels(counted).map(level -> (double) level / Step.LEVELS).toList();
    }

    /** The same as printed in the table. */
    String text(CountedCase counted) {
        if (step == null) {
            long scored = levels(counted).count();
            return scored == 0 ? "–" : String.format(Locale.ROOT, "%d / %d", high(counted), scored);
        }
        String levels =
                String.join(", ", stepLevels(counted).map(String::valueOf).toList());
        return levels.isEmpty() ? "–" : levels;
    }

    private static int high(CountedCase counted) {
        return (int) levels(counted).filter(level -> level >= StepScore.HIGH).count();
    }

    private static Stream<Integer> levels(CountedCase counted) {
        return counted.sheets().stream()
                .map(SignedSheet::steps)
                .flatMap(List::stream)
                .map(SignedSheet.SignedStep::state)
                .flatMap(
                        state -> state instanceof StepState.Scored scored ? Stream.of(scored.level()) : Stream.empty());
    }

    private Stream<Integer> stepLevels(CountedCase counted) {
        return step == null
                ? Stream.empty()
                : step.scores().stream()
                        .filter(score -> score.sheet().caseId().equals(counted.id()))
                        .map(StepScore::level)
                        .filter(OptionalInt::isPresent)
                        .map(OptionalInt::getAsInt);
    }
}
