package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScoreTableTests {

    private static final CaseContext CASE = new CaseContext("c", 0, 0, 0, List.of());

    @Test
    void bandsBecomeCumulativeIndicators() {
        assertThat(CaseBand.A.indicators()).containsExactly(0.0, 0.0, 0.0);
        assertThat(CaseBand.C.indicators()).containsExactly(1.0, 1.0, 0.0);
        assertThat(CaseBand.D.indicators()).containsExactly(1.0, 1.0, 1.0);
    }

    @Test
    void sixtyDaysAwayAreFreeAndEightMonthsTheMost() {
        assertThat(CaseContext.gapExcess(Duration.ofDays(60))).isZero();
        assertThat(CaseContext.gapExcess(Duration.ofDays(75))).isEqualTo(0.5);
        assertThat(CaseContext.gapExcess(Duration.ofDays(300))).isEqualTo(8);
        assertThat(CaseContext.gapExcess(Duration.ofDays(3000))).isEqualTo(8);
        Instant end = Instant.parse("2026-03-12T10:00:00Z");
        CaseContext first = CaseContext.of("k", end, 3, CaseBand.B, null);
        assertThat(first.gapExcess()).isZero();
        assertThat(first.order()).isEqualTo(end.getEpochSecond());
        CaseContext later = CaseContext.of("k", end, 3, CaseBand.B, end.minus(Duration.ofDays(90)));
        assertThat(later.gapExcess()).isEqualTo(1);
    }

    @Test
    void idsAreOrderedByNumberWhenAllAreNumbers() {
        assertThat(IdOrder.sorted(List.of("10", "9", "0"))).containsExactly("0", "9", "10");
        assertThat(IdOrder.sorted(List.of("10", "9", "x"))).containsExactly("10", "9", "x");
    }

    @Test
    void impossibleScoresAreRefusedWithASentence() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ObservedScore("a", "t", "v", CASE, "s", 0))
                .withMessageContaining("assessment a, step s");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> ScoreTable.of(5, List.of("s"), List.of(new ObservedScore("a", "t", "v", CASE, "s", 6))))
                .withMessageContaining("above the highest level 5");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> ScoreTable.of(5, List.of("s"), List.of(new ObservedScore("a", "t", "v", CASE, "x", 3))))
                .withMessageContaining("step x is not in the list");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new CaseContext("c", 0, Double.NaN, 0, List.of()))
                .withMessageContaining("experience");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ScoreTable.of(16, List.of(), List.of()))
                .withMessageContaining("2..15");
    }

    @Test
    void theGapBeforeACaseNobodySawIsKept() {
        CaseContext first = new CaseContext("c1", 1, 1, 0, List.of());
        CaseContext unseen = new CaseContext("c2", 2, 2, 3, List.of());
        CaseContext last = new CaseContext("c3", 3, 3, 1, List.of());
        ScoreTable table = ScoreTable.of(
                5,
                List.of("s"),
                List.of(
                        new ObservedScore("a3", "t", "v", last, "s", 4),
                        new ObservedScore("a2", "t", "v", unseen, "s", 1, 5),
                        new ObservedScore("a1", "t", "v", first, "s", 2)));
        assertThat(table.caseIds).containsExactly("c1", "c3");
        assertThat(table.gapExcess).containsExactly(0, 4);
        assertThat(table.scores()).isEqualTo(2);
    }

    @Test
    void twoScorersOfOneCaseShareIt() {
        ScoreTable table = ScoreTable.of(
                5,
                List.of("s"),
                List.of(
                        new ObservedScore("a", "t", "v", CASE, "s", 4),
                        new ObservedScore("b", "t", "w", CASE, "s", 2)));
        assertThat(table.caseIds).hasSize(1);
        assertThat(table.assessments()).isEqualTo(2);
    }
}
