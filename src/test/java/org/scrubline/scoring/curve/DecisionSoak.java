package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
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
                DecisionRules.Rule other = table.best(family, rate);
                System.out.print(table.line(other));
                assertThat(table.row(ours).missed())
                        .as(other.name())
                        .isLessThan(table.row(other).missed());
                assertThat(table.row(ours).missedStrict())
                        .as(other.name())
                        .isLessThan(table.row(other).missedStrict());
            }
        }
        assertThat(table.row(DecisionRules.assurance(0.8)).falseReady()).isLessThan(0.02);
    }
}
