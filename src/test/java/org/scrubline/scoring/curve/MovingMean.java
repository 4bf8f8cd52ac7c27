package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What a list of averages would say in the place of the curve: the mean of the last five cases' raw mean levels. */
final class MovingMean {

    private static final int CASES = 5;

    private final List<Double> means = new ArrayList<>();
    private final List<Double> truths = new ArrayList<>();

    /** Means by order of the trainee's cases. */
    static Map<Long, Double> of(List<ObservedScore> scores, String trainee) {
        TreeMap<Long, Double> raw = scores.stream()
                .filter(score -> score.trainee().equals(trainee))
                .collect(Collectors.groupingBy(
                        score -> score.context().order(),
                        TreeMap::new,
                        Collectors.averagingInt(ObservedScore::lowest)));
        Map<Long, Double> moving = new TreeMap<>();
        List<Double> seen = new ArrayList<>();
        raw.forEach((order, mean) -> {
            seen.add(mean);
            moving.put(
                    order,
                    seen.subList(Math.max(0, seen.size() - CASES), seen.size()).stream()
                            .mapToDouble(one -> one)
                            .average()
                            .orElseThrow());
        });
        return moving;
    }

    void add(double mean, double truth) {
        means.add(mean);
        truths.add(truth);
    }

    /** Root mean square error in logits after the quadratic of the mean that fits the truths best (least squares). */
    double error() {
        double[] rest = truths.stream().mapToDouble(one -> one).toArray();
        double[][] basis = new double[3][rest.length];
        for (int power = 0; power < basis.length; power++) {
            for (int i = 0; i < rest.length; i++) {
                basis[power][i] = Math.pow(means.get(i), power);
            }
            for (int lower = 0; lower < power; lower++) {
                takeOut(basis[lower], basis[power]);
            }
            takeOut(basis[power], rest);
        }
        return Math.sqrt(Arrays.stream(rest).map(one -> one * one).average().orElseThrow());
    }

    /** Takes out of a vector its part along another. */
    private static void takeOut(double[] along, double[] from) {
        double product = 0;
        double square = 0;
        for (int i = 0; i < from.length; i++) {
            product += along[i] * from[i];
            square += along[i] * along[i];
        }
        for (int i = 0; i < from.length; i++) {
            from[i] -= product / square * along[i];
        }
    }
}
