package org.scrubline.scoring.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.scrubline.scoring.Require;

/**
 * Krippendorff's alpha: agreement of any number of raters on units, ratings may be missing.
 *
 * <p>alpha = 1 - observed / expected disagreement over all pairable values; a unit with fewer than two ratings drops
 * out. A pair of values disagrees by the squared distance of the {@link Metric}; a unit of u ratings gives each of its
 * pairs the weight 1 / (u - 1). 1 is agreement, 0 what chance would give, and it may be negative. Empty when no
 * pairable values differ.
 *
 * <p>Krippendorff, Content Analysis; Krippendorff, Computing Krippendorff's alpha-reliability, 2011.
 */
public final class KrippendorffAlpha {

    /** How far two values are apart. */
    public enum Metric {
        /** Equal or not: 0 or 1. */
        NOMINAL,
        /**
         * By the number of ratings that lie between, half of those at both ends included; not the difference of ranks.
         */
        ORDINAL,
        /** By the difference. */
        INTERVAL,
        /** By the difference relative to the sum; values must not be negative. */
        RATIO;

        /**
         * {@return the metric of this name, whatever its case}
         *
         * @param name nominal, ordinal, interval or ratio
         * @throws IllegalArgumentException when there is no such metric
         */
        public static Metric named(String name) {
            for (Metric metric : values()) {
                if (metric.name().equals(name.toUpperCase(Locale.ROOT))) {
                    return metric;
                }
            }
            throw new IllegalArgumentException(
                    "There is no metric named " + name + "; use nominal, ordinal, interval or ratio.");
        }
    }

    private final double[] values;
    private final double[] counts;
    private final double[][] coincidences;
    private final double pairable;

    /**
     * Counts the coincidences.
     *
     * @param ratingsByRater one list a rater, one rating a unit, null = missing; at least 2 raters
     * @throws IllegalArgumentException when there are fewer raters, lists differ in length, a rating is no number, or
     *     no unit has two ratings
     */
    public KrippendorffAlpha(List<? extends List<@Nullable Double>> ratingsByRater) {
        Require.that(
                ratingsByRater.size() >= 2,
                "Krippendorff's alpha needs at least 2 raters, but has %s.",
                ratingsByRater.size());
        List<List<Double>> units = pairableUnits(ratingsByRater);
        TreeSet<Double> distinct = new TreeSet<>();
        units.forEach(distinct::addAll);
        values = distinct.stream().mapToDouble(Double::doubleValue).toArray();
        counts = new double[values.length];
        coincidences = new double[values.length][values.length];
        double total = 0;
        for (List<Double> unit : units) {
            count(unit);
            total += unit.size();
        }
        pairable = total;
    }

    private static List<List<Double>> pairableUnits(List<? extends List<@Nullable Double>> ratingsByRater) {
        int size = ratingsByRater.get(0).size();
        List<List<Double>> units = new ArrayList<>();
        for (int u = 0; u < size; u++) {
            List<Double> unit = new ArrayList<>();
            for (List<@Nullable Double> rater : ratingsByRater) {
                Require.sameLength("The first rater", size, "another rater", rater.size());
                Double rating = rater.get(u);
                if (rating != null) {
                    unit.add(Require.finite("Every rating", rating) + 0.0);
                }
            }
            if (unit.size() >= 2) {
                units.add(unit);
            }
        }
        Require.that(!units.isEmpty(), "No unit has two ratings, so there is nothing to compare.");
        return units;
    }

    private void count(List<Double> unit) {
        double share = 1.0 / (unit.size() - 1);
        for (int i = 0; i < unit.size(); i++) {
            int first = java.util.Arrays.binarySearch(values, unit.get(i));
            counts[first]++;
            for (int j = 0; j < unit.size(); j++) {
                if (i != j) {
                    coincidences[first][java.util.Arrays.binarySearch(values, unit.get(j))] += share;
                }
            }
        }
    }

    /** {@return the number of values that have a partner, at least 2} */
    public int pairableValues() {
        return (int) Math.round(pairable);
    }

    /**
     * {@return the coefficient, at most 1; empty when all pairable values are equal}
     *
     * @param metric how far two values are apart
     * @throws IllegalArgumentException for the ratio of negative values
     */
    public OptionalDouble alpha(Metric metric) {
        Require.that(
                metric != Metric.RATIO || values[0] >= 0,
                "The ratio metric needs values of 0 or more, not %s.",
                values[0]);
        double observed = 0;
        double expected = 0;
        for (int c = 0; c < values.length; c++) {
            for (int k = 0; k < values.length; k++) {
                double distance = c == k ? 0 : TwoWayTable.square(distance(metric, Math.min(c, k), Math.max(c, k)));
                observed += coincidences[c][k] * distance;
                expected += counts[c] * counts[k] * distance;
            }
        }
        return expected == 0 ? OptionalDouble.empty() : OptionalDouble.of(1 - (pairable - 1) * observed / expected);
    }

    private double distance(Metric metric, int low, int high) {
        return switch (metric) {
            case NOMINAL -> 1;
            case ORDINAL -> between(low, high);
            case INTERVAL -> values[high] - values[low];
            case RATIO -> (values[high] - values[low]) / (values[high] + values[low]);
        };
    }

    private double between(int low, int high) {
        double sum = -(counts[low] + counts[high]) / 2;
        for (int g = low; g <= high; g++) {
            sum += counts[g];
        }
        return sum;
    }
}
