package org.scrubline.support;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Two rows of times beside each other.
 *
 * @param one in milliseconds
 * @param other in milliseconds
 * @param low lower end of the 95 % interval of the difference of their medians, in milliseconds
 * @param high its upper end
 */
public record Medians(double one, double other, double low, double high) {

    private static final int RESAMPLES = 4000;

    /** The percentile bootstrap: each row is resampled by itself. */
    public static Medians of(List<Double> one, List<Double> other) {
        Random random = new Random(20260321);
        double[] differences = IntStream.range(0, RESAMPLES)
                .mapToDouble(i -> median(resampled(one, random)) - median(resampled(other, random)))
                .sorted()
                .toArray();
        return new Medians(
                median(one), median(other), differences[RESAMPLES / 40], differences[RESAMPLES - 1 - RESAMPLES / 40]);
    }

    /** In one line, to print. */
    public String line() {
        return String.format(
                "median %.2f ms known, %.2f ms unknown; 95 %% interval of the difference %.2f to %.2f ms",
                one, other, low, high);
    }

    private static List<Double> resampled(List<Double> values, Random random) {
        return random.ints(values.size(), 0, values.size())
                .mapToObj(values::get)
                .toList();
    }

    private static double median(List<Double> values) {
        double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
