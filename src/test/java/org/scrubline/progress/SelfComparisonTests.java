package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.StepState;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;

class SelfComparisonTests {

    @Test
    void onlyStepsThatBothScoredAreCompared() {
        SignedSheet sheet = ASignedSheet.ofDay(1)
                .level("S1", 3)
                .state("S2", new StepState.NotSeen())
                .build();

        SelfComparison compared = compare(List.of(sheet), Map.of(sheet.caseId(), Map.of("S1", 4, "S2", 5, "X9", 5)));

        assertThat(compared.cases()).singleElement().satisfies(one -> {
            assertThat(one.steps()).isEqualTo(1);
            assertThat(one.own()).isEqualTo(4);
            assertThat(one.signed()).isEqualTo(3);
            assertThat(one.difference()).isEqualTo(1);
        });
    }

    @Test
    void aCaseWithoutAnOwnLevelOrAStepInCommonIsAbsent() {
        SignedSheet without = ASignedSheet.ofDay(1).build();
        SignedSheet apart = ASignedSheet.ofDay(2).build();

        SelfComparison compared = compare(List.of(without, apart), Map.of(apart.caseId(), Map.of("X9", 5)));

        assertThat(compared.cases()).isEmpty();
        assertThat(compared.recently()).isEmpty();
    }

    @Test
    void twoSupervisorsOfOneCaseCountBoth() {
        SignedSheet first = ASignedSheet.ofDay(1).level("S1", 3).build();
        SignedSheet second = ASignedSheet.ofDay(1)
                .inCase(first.caseId())
                .by(2)
                .level("S1", 4)
                .build();

        SelfComparison compared = compare(List.of(first, second), Map.of(first.caseId(), Map.of("S1", 4)));

        assertThat(compared.cases()).singleElement().satisfies(one -> {
            assertThat(one.sheets()).containsExactly(first, second);
            assertThat(one.steps()).isEqualTo(2);
            assertThat(one.difference()).isEqualTo(.5);
        });
    }

    @Test
    void theSentenceIsAboutTheNewestTenCasesEachWeighingAlike() {
        List<SignedSheet> sheets = IntStream.range(0, 12)
                .mapToObj(day -> ASignedSheet.ofDay(day).level("S1", 3).build())
                .toList();
        Map<UUID, Map<String, Integer>> own = new HashMap<>();
        IntStream.range(0, 12)
                .forEach(day -> own.put(sheets.get(day).caseId(), Map.of("S1", day < 2 ? 1 : day == 11 ? 5 : 4)));

        SelfComparison compared = compare(sheets, own);

        assertThat(compared.cases()).hasSize(12);
        assertThat(compared.newest()).hasSize(10);
        assertThat(compared.recently().orElseThrow()).isCloseTo(1.1, within(1e-12));
    }

    private static SelfComparison compare(List<SignedSheet> sheets, Map<UUID, Map<String, Integer>> own) {
        return SelfComparison.of(Evidence.of(sheets), own);
    }
}
