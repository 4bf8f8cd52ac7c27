package org.scrubline.scoring.reliability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.reliability.KrippendorffAlpha.Metric;

/**
 * Several scorers of the same works, step by step: how well they agree, and how one of them differs from the others.
 *
 * <p>A unit is one step of one work that at least two scorers gave a level; what only one of them saw drops out. Agreement
 * is Krippendorff's alpha for ordered values ({@link KrippendorffAlpha}) beside two plain shares of the pairs of levels
 * in a unit. A scorer is compared with the median of the other levels in a unit, the mean of the middle two when they
 * are even in number; differences are own less others, in levels.
 *
 * <p>Nothing is given below {@value #SCORERS} scorers or {@value #UNITS} units: alpha of a few units swings with each of
 * them. A difference rests on units with at least {@value #OTHERS} others, so that the median is nobody's level alone. The
 * three limits are this project's own.
 */
public final class SameWork {

    public static final int SCORERS = 3;
    public static final int UNITS = 20;
    public static final int OTHERS = 3;

    /**
     * One level.
     *
     * @param scorer who gave it
     * @param work what was scored
     * @param step of the work; the same name means the same step in another work
     * @param level 1 or more
     */
    public record Rating(String scorer, String work, String step, int level) {}

    /**
     * One scorer beside the others.
     *
     * @param units how many units it is over
     * @param own mean of the scorer's levels
     * @param others mean of the medians of the others
     */
    public record Difference(int units, double own, double others) {

        /** Higher (+) or lower (−) than the others, in levels. */
        public double mean() {
            return own - others;
        }
    }

    private record Unit(String work, String step, Map<String, Integer> levels) {}

    private record Beside(String step, int own, double others) {}

    private final List<Unit> units;

    /**
     * Sorts ratings into units.
     *
     * @param ratings in any order; may be empty
     * @throws IllegalArgumentException when a scorer gave one step of one work two levels
     */
    public SameWork(List<Rating> ratings) {
        Map<List<String>, Unit> all = new TreeMap<>(
                Comparator.<List<String>, String>comparing(key -> key.get(0)).thenComparing(key -> key.get(1)));
        for (Rating rating : ratings) {
            Unit unit = all.computeIfAbsent(
                    List.of(rating.work(), rating.step()),
                    key -> new Unit(rating.work(), rating.step(), new TreeMap<>()));
            Integer before = unit.levels().put(rating.scorer(), rating.level());
            Require.that(before == null, "%s scored %s of %s twice.", rating.scorer(), rating.step(), rating.work());
        }
        units = all.values().stream().filter(unit -> unit.levels().size() > 1).toList();
    }

    /** {@return how many scorers have a level in a unit} */
    public int scorers() {
        return names().size();
    }

    /** {@return how many steps of works have two levels or more} */
    public int units() {
        return units.size();
    }

    /** {@return how many works have a unit} */
    public int works() {
        return (int) units.stream().map(Unit::work).distinct().count();
    }

    /** {@return how many pairs of levels the units hold} */
    public long pairs() {
        return pairsWithin(Integer.MAX_VALUE);
    }

    /** {@return whether there are enough scorers and units for anything else to be given} */
    public boolean enough() {
        return scorers() >= SCORERS && units() >= UNITS;
    }

    /**
     * {@return share of the pairs at most this far apart, 0 to 1; empty below the limits}
     *
     * @param levels 0 for equal levels, 1 for neighbouring ones too
     */
    public OptionalDouble share(int levels) {
        return enough() ? OptionalDouble.of((double) pairsWithin(levels) / pairs()) : OptionalDouble.empty();
    }

    /** {@return Krippendorff's alpha for ordered values; empty below the limits or when all levels are equal} */
    public OptionalDouble alpha() {
        return enough() ? alphaOfAny() : OptionalDouble.empty();
    }

    /** {@return the same of any number of units, at least one} */
    OptionalDouble alphaOfAny() {
        List<List<@Nullable Double>> byScorer = new ArrayList<>();
        for (String scorer : names()) {
            List<@Nullable Double> own = new ArrayList<>();
            for (Unit unit : units) {
                Integer level = unit.levels().get(scorer);
                own.add(level == null ? null : level.doubleValue());
            }
            byScorer.add(own);
        }
        return new KrippendorffAlpha(byScorer).alpha(Metric.ORDINAL);
    }

    /** {@return how many units a scorer shares with at least {@value #OTHERS} others} */
    public int compared(String scorer) {
        return beside(scorer).size();
    }

    /**
     * {@return a scorer beside the others over all steps; null below {@value #UNITS} units to compare}
     *
     * @param scorer as named in the ratings; anyone else has no units
     */
    public @Nullable Difference difference(String scorer) {
        List<Beside> all = beside(scorer);
        return enough() && all.size() >= UNITS ? mean(all) : null;
    }

    /** {@return the same by step, in the order of their names; empty below {@value #UNITS} units in all} */
    public Map<String, Difference> bySteps(String scorer) {
        if (difference(scorer) == null) {
            return Map.of();
        }
        return beside(scorer).stream()
                .collect(Collectors.groupingBy(
                        Beside::step, TreeMap::new, Collectors.collectingAndThen(Collectors.toList(), SameWork::mean)));
    }

    private static Difference mean(List<Beside> all) {
        return new Difference(
                all.size(),
                all.stream().mapToInt(Beside::own).average().orElse(0),
                all.stream().mapToDouble(Beside::others).average().orElse(0));
    }

    private List<Beside> beside(String scorer) {
        List<Beside> all = new ArrayList<>();
        for (Unit unit : units) {
            Integer own = unit.levels().get(scorer);
            if (own != null && unit.levels().size() > OTHERS) {
                all.add(new Beside(
                        unit.step(),
                        own,
                        median(unit.levels().entrySet().stream()
                                .filter(entry -> !entry.getKey().equals(scorer))
                                .mapToDouble(Map.Entry::getValue))));
            }
        }
        return all;
    }

    private static double median(DoubleStream levels) {
        double[] sorted = levels.sorted().toArray();
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    private long pairsWithin(int levels) {
        long pairs = 0;
        for (Unit unit : units) {
            List<Integer> all = List.copyOf(unit.levels().values());
            for (int i = 0; i < all.size(); i++) {
                for (int j = 0; j < i; j++) {
                    pairs += Math.abs(all.get(i) - all.get(j)) <= levels ? 1 : 0;
                }
            }
        }
        return pairs;
    }

    private List<String> names() {
        return units.stream()
                .flatMap(unit -> unit.levels().keySet().stream())
                .distinct()
                .sorted()
                .toList();
    }
}
