package org.scrubline.committee.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.pack.PackContent.AskLine;
import org.scrubline.platform.Role;
import org.scrubline.training.Exercise;
import org.scrubline.training.TrainingAnswer;
import org.scrubline.training.TrainingEntry;
import org.scrubline.training.TrainingKind;

/** Each row of E0, E1 and E5. That one of each is asked for is the project's own default, without a source. */
class TrainingChecklistTests {

    private static final Instant AT = Instant.parse("2026-03-12T12:00:00Z");

    private static TrainingEntry entry(
            TrainingKind kind, @Nullable Exercise exercise, Role writer, @Nullable Boolean confirmed) {
        UUID someone = UUID.randomUUID();
        return new TrainingEntry(
                UUID.randomUUID(),
                someone,
                someone,
                kind,
                exercise,
                LocalDate.parse("2026-03-12"),
                "said",
                new TrainingEntry.Author(someone, "Somebody", writer, AT),
                confirmed == null ? null : new TrainingAnswer(someone, "Somebody", confirmed, "", AT));
    }

    private static TrainingEntry practice(Exercise exercise, @Nullable Boolean confirmed) {
        return entry(TrainingKind.WET_LAB, exercise, Role.TRAINEE, confirmed);
    }

    private static AskLine row(Ask ask, boolean introduced, TrainingEntry... entries) {
        return new TrainingChecklist(List.of(entries), introduced)
                .lines().stream()
                        .flatMap(line -> line.asks().stream())
                        .filter(line -> line.ask() == ask)
                        .findFirst()
                        .orElseThrow();
    }

    @Test
    void theLevelsWithoutAGateAreE0E1AndE5() {
        assertThat(new TrainingChecklist(List.of(), false).lines())
                .extracting(PackContent.TrainingLine::level)
                .containsExactly("E0", "E1", "E5");
    }

    @Test
    void anInductionIsAskedForAndAGoalIsNone() {
        assertThat(row(Ask.INDUCTION, false, entry(TrainingKind.GOAL, null, Role.TRAINEE, null))
                        .met())
                .isFalse();
        TrainingEntry induction = entry(TrainingKind.INDUCTION, null, Role.DIRECTOR, null);
        assertThat(row(Ask.INDUCTION, false, induction).met()).isTrue();
        assertThat(row(Ask.INDUCTION, false, induction).records()).containsExactly(induction.id());
    }

    @Test
    void onlyPracticeASupervisorSawCounts() {
        assertThat(row(Ask.FLAP_PRACTICE, false, practice(Exercise.FLAP, null)).met())
                .as("waits")
                .isFalse();
        assertThat(row(Ask.FLAP_PRACTICE, false, practice(Exercise.FLAP, false)).met())
                .as("not confirmed")
                .isFalse();
        assertThat(row(Ask.FLAP_PRACTICE, false, practice(Exercise.SUTURE, true))
                        .met())
                .as("of something else")
                .isFalse();
        assertThat(row(Ask.FLAP_PRACTICE, false, practice(Exercise.FLAP, true)).met())
                .isTrue();
        assertThat(row(Ask.SUTURE_PRACTICE, false, entry(TrainingKind.WET_LAB, Exercise.SUTURE, Role.SUPERVISOR, null))
                        .met())
                .isTrue();
        assertThat(row(Ask.PRACTICE, false, practice(Exercise.DEVICE, true)).met())
                .isTrue();
    }

    @Test
    void teachingAsksForAnIntroductionToScoring() {
        assertThat(row(Ask.SCORER_TRAINING, false).met()).isFalse();
        assertThat(row(Ask.SCORER_TRAINING, true).met()).isTrue();
    }
}
