package org.scrubline.demo.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Whole numbers in given proportions that add up to a given sum: the largest remainders are rounded up. */
final class Apportioned {

    private Apportioned() {}

    /** One number for each weight, 0 or more. */
    static List<Integer> of(List<Integer> weights, int sum) {
        double all = Math.max(1, weights.stream().mapToInt(Integer::intValue).sum());
        List<Integer> parts = new ArrayList<>();
        weights.forEach(weight -> parts.add((int) Math.floor(weight * sum / all)));
        int left = sum - parts.stream().mapToInt(Integer::intValue).sum();
        IntStream.range(0, weights.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> parts.get(i) - weights.get(i) * sum / all))
                .limit(left)
                .forEach(i -> parts.set(i, parts.get(i) + 1));
        return parts;
    }

    /** Each of the values as often as its part says, in order. */
    static <T> List<T> spread(List<T> values, List<Integer> parts) {
        List<T> spread = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            for (int n = 0; n < parts.get(i); n++) {
                spread.add(values.get(i));
            }
        }
        return spread;
    }
}
