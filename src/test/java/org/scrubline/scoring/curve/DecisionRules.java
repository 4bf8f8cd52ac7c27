package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import org.scrubline.scoring.control.LearningCurveCusum;

/** Families of rules that say after how many cases a trainee is declared ready. */
final class DecisionRules {

    private static final double[][] SUCCESS_RATES = {
        {0.3, 0.2}, {0.4, 0.2}, {0.4, 0.3}, {0.5, 0.2}, {0.5, 0.3}, {0.5, 0.4}, {0.6, 0.3}, {0.6, 0.4}, {0.6, 0.5}
    };

    private DecisionRules() {}

    /** @param declares number of cases at the declaration, 0 for never */
    record Rule(String name, ToIntFunction<TraineeHistory> declares) {}

    static Rule count(int cases) {
        return new Rule("after " + cases + " cases", h -> cases);
    }

    static Rule assurance(double least) {
        return new Rule(
                "assurance >= " + two(least), h -> first(n -> h.assurance().get(n) >= least));
    }

    /** What the product says: the assurance and the gates of the evidence. */
    static Rule supports(double least) {
        return new Rule(
                "evidence supports, assurance >= " + two(least),
                h -> first(n -> h.assurance().get(n) >= least && h.decidable().get(n)));
    }

    static Rule recentMean(double least) {
        return new Rule("mean of last 5 >= " + two(least), h -> recent(h, 5, least, TraineeHistory.Counted::mean));
    }

    static Rule recentSuccess(double least) {
        return new Rule("success in last 10 >= " + two(least), h -> recent(h, 10, least, c -> c.failure() ? 0 : 1));
    }

    static Rule cusum(double adequate, double inadequate, double limit) {
        LearningCurveCusum chart = new LearningCurveCusum(1 - adequate, 1 - inadequate, limit);
        return new Rule(
                String.format(
                        Locale.ROOT, "LC-CUSUM, success %.1f against %.1f, limit %.1f", adequate, inadequate, limit),
                h -> chart
                        .firstSignal(h.counted().stream()
                                .map(TraineeHistory.Counted::failure)
                                .toList())
                        .stream()
                        .map(signal -> h.counted().get(signal - 1).after())
                        .findFirst()
                        .orElse(0));
    }

    static List<Rule> recentMeans() {
        return IntStream.rangeClosed(80, 100)
                .mapToObj(i -> recentMean(i / 20.0))
                .toList();
    }

    static List<Rule> recentSuccesses() {
        return IntStream.rangeClosed(1, 10)
                .mapToObj(i -> recentSuccess(i / 10.0))
                .toList();
    }

    static List<Rule> cusums() {
        List<Rule> rules = new ArrayList<>();
        for (double[] rates : SUCCESS_RATES) {
            IntStream.rangeClosed(5, 80)
                    .mapToObj(i -> cusum(rates[0], rates[1], i / 10.0))
                    .forEach(rules::add);
        }
        return rules;
    }

    private static int recent(
            TraineeHistory history, int window, double least, ToDoubleFunction<TraineeHistory.Counted> value) {
        List<TraineeHistory.Counted> counted = history.counted();
        return IntStream.rangeClosed(window, counted.size())
                .filter(end -> counted.subList(end - window, end).stream()
                                .mapToDouble(value)
                                .average()
                                .orElseThrow()
                        >= least)
                .map(end -> counted.get(end - 1).after())
                .findFirst()
                .orElse(0);
    }

    private static int first(IntPredicate declared) {
        return IntStream.range(0, DecisionSimulation.CASES)
                        .filter(declared)
                        .findFirst()
                        .orElse(-1)
                + 1;
    }

    private static String two(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }
}
