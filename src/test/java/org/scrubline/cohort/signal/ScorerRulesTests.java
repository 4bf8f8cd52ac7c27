package org.scrubline.cohort.signal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.scrubline.scoring.curve.Flag;
import org.scrubline.scoring.curve.ProcedureStandard;

class ScorerRulesTests {

    @Test
    void belowTenSheetsOrFourTraineesNothingIsSaid() {
        assertThat(kinds(sheets(9, 4, 4), List.of())).isEmpty();
        assertThat(kinds(sheets(40, 3, 4), List.of())).isEmpty();
    }

    @Test
    void oneLevelForAllStepsIsNoticed() {
        assertThat(kinds(sheets(12, 4, 4), List.of())).contains(Signal.Kind.ONE_LEVEL);
    }

    @Test
    void levelsThatDifferAreNot() {
        assertThat(kinds(sheets(12, 4, 2, 3, 4, 5), List.of())).isEmpty();
    }

    @Test
    void twoNeighbouringLevelsAloneAreANarrowRange() {
        assertThat(kinds(sheets(12, 4, 3, 4), List.of())).containsExactly(Signal.Kind.NARROW_RANGE);
        assertThat(kinds(sheets(12, 4, 2, 4), List.of())).isEmpty();
    }

    @Test
    void mostSheetsSignedAfterTheLimitAreLate() {
        List<SignedForm> late = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            Duration delay = Duration.ofHours(i < 7 ? 73 : 72);
            late.add(AForm.of("" + i)
                    .about("T" + i % 4)
                    .day(i)
                    .after(delay)
                    .steps(2, 3, 4, 5)
                    .build());
        }
        assertThat(kinds(late, List.of())).containsExactly(Signal.Kind.SIGNS_LATE);
        late.set(0, AForm.of("0").about("T0").steps(2, 3, 4, 5).build());
        assertThat(kinds(late, List.of())).isEmpty();
    }

    @Test
    void anOffsetNeedsTheEngineAndTheSheetsToSayTheSame() {
        List<SignedForm> all = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            all.add(AForm.of("a" + i)
                    .about("T" + i % 4)
                    .day(i)
                    .steps(1, 2, 3, 4)
                    .build());
            all.add(AForm.of("b" + i)
                    .about("T" + i % 4)
                    .day(i)
                    .by("R")
                    .steps(2, 3, 4, 5)
                    .build());
        }
        assertThat(kinds(all, List.of(differs(2)))).containsExactly(Signal.Kind.SCORES_LOWER);
        assertThat(kinds(all, List.of(differs(-2)))).isEmpty();
        assertThat(kinds(all, List.of())).isEmpty();
    }

    private static Flag differs(double severity) {
        return new Flag(Flag.Kind.SCORES_DIFFER, "S", severity, .7, "");
    }

    private static List<SignedForm> sheets(int count, int trainees, int... levels) {
        List<SignedForm> forms = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            forms.add(AForm.of("" + i)
                    .about("T" + i % trainees)
                    .day(i)
                    .steps(levels)
                    .build());
        }
        return forms;
    }

    private static List<Signal.Kind> kinds(List<SignedForm> forms, List<Flag> flags) {
        ProgrammeRecord programme = new ProgrammeRecord(
                forms,
                List.of(),
                Map.of(),
                Map.of(),
                new ProgrammeRecord.Limits(
                        Duration.ofDays(56),
                        Duration.ofHours(72),
                        Duration.ofDays(14),
                        ProcedureStandard.Minimums.USUAL),
                Instant.parse("2026-12-01T12:00:00Z"));
        ScorerFigures figures = ScorerFigures.of(programme, AdjustedLevels.of(forms), "S");
        return ScorerRules.of(figures, flags, programme).stream()
                .map(Signal::kind)
                .toList();
    }
}
