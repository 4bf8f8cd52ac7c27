package org.scrubline.scoring.ordinal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.ordinal.ManyFacetRasch.Rating;

/** Ratings as indices, and where each parameter lies: items, all raters but the last, all steps but the last, log SD. */
final class FacetDesign {
    private final List<String> items;
    private final List<String> raters;
    private final int steps;
    private final int combinations;
    /** For each person the combination of rater and item, and the score above the lowest, of each rating. */
    final List<int[][]> persons = new ArrayList<>();

    FacetDesign(List<Rating> ratings) {
        Require.notEmpty("The list of ratings", ratings);
        items = distinct(ratings.stream().map(Rating::item).toList());
        raters = distinct(ratings.stream().map(Rating::rater).toList());
        List<String> names = distinct(ratings.stream().map(Rating::person).toList());
        Require.that(names.size() >= 2, "The model needs at least 2 persons, but has %s.", names.size());
        Require.that(raters.size() >= 2, "The model needs at least 2 raters, but has %s.", raters.size());
        int[] scores =
                ratings.stream().mapToInt(Rating::score).distinct().sorted().toArray();
        Require.that(scores.length >= 2, "All scores are in one category, so there is nothing to model.");
        steps = scores[scores.length - 1] - scores[0];
        Require.that(
                steps == scores.length - 1,
                "Every category between the lowest and the highest score must occur; %s of %s do.",
                scores.length,
                steps + 1);
        combinations = raters.size() * items.size();
        Map<String, List<int[]>> byPerson = new LinkedHashMap<>();
        names.forEach(name -> byPerson.put(name, new ArrayList<>()));
        for (Rating rating : ratings) {
            int combination = raters.indexOf(rating.rater()) * items.size() + items.indexOf(rating.item());
            byPerson.computeIfAbsent(rating.person(), name -> new ArrayList<>())
                    .add(new int[] {combination, rating.score() - scores[0]});
        }
        byPerson.values().forEach(rows -> persons.add(rows.toArray(int[][]::new)));
    }

    private static List<String> distinct(List<String> names) {
        return List.copyOf(new TreeSet<>(names));
    }

    List<String> items() {
        return items;
    }

    List<String> raters() {
        return raters;
    }

    int steps() {
        return steps;
    }

    int combinations() {
        return combinations;
    }

    int itemOf(int combination) {
        return combination % items.size();
    }

    int raterOf(int combination) {
        return combination / items.size();
    }

    int parameters() {
        return firstStep() + steps;
    }

    int firstStep() {
        return items.size() + raters.size() - 1;
    }

    double severity(double[] at, int rater) {
        return lastOfZeroSum(at, items.size(), raters.size(), rater);
    }

    double step(double[] at, int k) {
        return lastOfZeroSum(at, firstStep(), steps, k - 1);
    }

    private static double lastOfZeroSum(double[] at, int first, int count, int index) {
        return index < count - 1
                ? at[first + index]
                : 0.0 - Arrays.stream(at, first, first + count - 1).sum();
    }
}
