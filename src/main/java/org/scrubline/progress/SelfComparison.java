package org.scrubline.progress;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.signoff.SignedSheet;

/**
 * What a trainee thought of their own steps beside what was signed, case by case. Only steps that both scored are
 * compared; a step two supervisors scored counts once for each.
 *
 * @param cases oldest first; those without a step in common are absent
 */
public record SelfComparison(List<Compared> cases) {

    /** How many of the newest cases the sentence speaks of. */
    public static final int NEWEST = 10;

    /**
     * One case.
     *
     * @param sheets signed sheets with a step in common, at least one
     * @param steps pairs of levels, at least one
     * @param own mean of the own levels, 1 to 5
     * @param signed mean of the signed ones, 1 to 5
     */
    public record Compared(List<SignedSheet> sheets, int steps, double own, double signed) {

        public Compared {
            sheets = List.copyOf(sheets);
        }

        /** How much higher (+) or lower (−) the own levels are, in levels. */
        public double difference() {
            return own - signed;
        }
    }

    public SelfComparison {
        cases = List.copyOf(cases);
    }

    /**
     * Compares the counted sheets with the own levels.
     *
     * @param own level by step code, by case id
     */
    public static SelfComparison of(Evidence evidence, Map<UUID, Map<String, Integer>> own) {
        return new SelfComparison(evidence.cases().stream()
                .map(one -> compared(one, own.getOrDefault(one.id(), Map.of())))
                .filter(one -> one.steps > 0)
                .toList());
    }

    private record Pair(SignedSheet sheet, int own, int signed) {}

    private static Compared compared(CountedCase one, Map<String, Integer> own) {
        List<Pair> pairs = one.sheets().stream()
                .flatMap(sheet -> sheet.steps().stream().flatMap(step -> pair(sheet, step, own.get(step.stepCode()))))
                .toList();
        return new Compared(
                pairs.stream().map(Pair::sheet).distinct().toList(),
                pairs.size(),
                pairs.stream().mapToInt(Pair::own).average().orElse(0),
                pairs.stream().mapToInt(Pair::signed).average().orElse(0));
    }

    private static Stream<Pair> pair(SignedSheet sheet, SignedSheet.SignedStep step, @Nullable Integer own) {
        return own == null
                ? Stream.empty()
                : new StepScore(sheet, step.state()).level().stream().mapToObj(signed -> new Pair(sheet, own, signed));
    }

    /** The newest cases the sentence speaks of, oldest first. */
    public List<Compared> newest() {
        return cases.subList(Math.max(0, cases.size() - NEWEST), cases.size());
    }

    /** Mean difference of the newest cases, each weighing alike; empty without a case. */
    public OptionalDouble recently() {
        return newest().stream().mapToDouble(Compared::difference).average();
    }
}
