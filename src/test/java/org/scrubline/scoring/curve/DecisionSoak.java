package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Rules of decision on the same simulated trainees, in every family the one that misses fewest at the same rate of false
 * declarations. The others' limits are chosen on these very trainees, which favours them. docs/benchmarks.md keeps the
 * last table.
 */
class DecisionSoak {

    @Test
    void atTheSameFalseRateTheAssuranceMissesFewerAndIsEarlierThanEveryOtherRule() {
        DecisionTable table = new DecisionTable(DecisionSimulation.histories(3000, 80));
        System.out.print(table.header());
        List<DecisionRules.Rule> plain = List.of(
                DecisionRules.count(20),
                DecisionRules.count(40),
                DecisionRules.recentMean(4),
                DecisionRules.supports(0.8));
        plain.forEach(rule -> System.out.print(table.line(rule)));
        for (double least : new double[] {0.6, 0.7, 0.8, 0.9}) {
            DecisionRules.Rule ours = DecisionRules.assurance(least);
            double rate = table.row(ours).falseReady();
            System.out.print("at most the false rate of\n" + table.line(ours));
            for (List<DecisionRules.Rule> family :
                    List.of(DecisionRules.cusums(), DecisionRules.recentMeans(), DecisionRules.recentSuccesses())) {
                Optional<DecisionRules.Rule> best = table.best(family, rate);
                System.out.print(best.map(table::line)
                        .orElse("no rule like " + family.get(family.size() - 1).name() + "\n"));
                best.map(table::row)
                        .ifPresent(other -> assertThat(ours(table, ours, other))
                                .as(best.get().name())
                                .isTrue());
            }
        }
        assertThat(table.row(DecisionRules.assurance(0.8)).falseReady()).isLessThan(0.02);
    }

    private static boolean ours(DecisionTable table, DecisionRules.Rule ours, DecisionTable.Row other) {
        DecisionTable.Row row = table.row(ours);
        return row.missed() < other.missed()
                && row.delay() < other.delay()
                && row.missedStrict() < other.missedStrict();
    }
}
