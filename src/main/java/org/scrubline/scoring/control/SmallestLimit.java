package org.scrubline.scoring.control;

import java.util.function.IntToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.scrubline.scoring.Require;

/** Searches the limit of a learning-curve CUSUM; the false-signal probability never rises with the limit. */
final class SmallestLimit {
    private static final int MOST_CASES = 1000;
    private static final int MOST_STEPS = 1_000_000;

    private SmallestLimit() {}

    static double reachable(LogLikelihoodWeights weights, double rate, int n, double alpha) {
        Require.that(n <= MOST_CASES, "A limit is searched for at most %s cases, not %s.", MOST_CASES, n);
        double[] heights = IntStream.rangeClosed(1, n)
                .boxed()
                .flatMapToDouble(successes -> heights(weights, successes, n))
                .filter(height -> height > RunLength.SLACK)
                .sorted()
                .toArray();
        int first = first(k -> heights[k], heights.length, weights, rate, n, alpha);
        Require.that(
                first < heights.length,
                "With %s cases no chart that can signal keeps the false-signal probability at or below %s.",
                n,
                alpha);
        return heights[first];
    }

    private static DoubleStream heights(LogLikelihoodWeights weights, int successes, int n) {
        return IntStream.rangeClosed(0, n - successes)
                .mapToDouble(failures -> successes * weights.success() + failures * weights.failure());
    }

    static double onGrid(LogLikelihoodWeights weights, double rate, int n, double alpha, double gridStep) {
        Require.that(
                n * weights.success() / gridStep < MOST_STEPS,
                "A grid of step %s is too fine for %s cases.",
                gridStep,
                n);
        int steps = (int) Math.ceil(n * weights.success() / gridStep) + 1;
        return (first(k -> (k + 1) * gridStep, steps, weights, rate, n, alpha) + 1) * gridStep;
    }

    /** Index of the first limit that will do, or {@code count}. */
    private static int first(
            IntToDoubleFunction limit, int count, LogLikelihoodWeights weights, double rate, int n, double alpha) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            double falseSignals =
                    weights.runLength(limit.applyAsDouble(middle), rate).signalProbability(n);
            if (falseSignals <= alpha) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
