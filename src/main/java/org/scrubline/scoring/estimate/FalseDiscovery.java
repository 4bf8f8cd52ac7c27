package org.scrubline.scoring.estimate;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.scrubline.scoring.Require;

/**
 * Benjamini and Hochberg's control of the false-discovery rate over many tests, for flags: of the flags raised, at most
 * the share q is expected to be false, when the tests are independent or positively dependent.
 *
 * <p>With m p values in ascending order, adjusted p(i) = min over j of i or more of p(j) m / j, at most 1; equal p
 * values have equal adjusted ones. A single test keeps its p. O(m log m).
 *
 * <p>Benjamini and Hochberg, J R Stat Soc B 1995;57:289, doi:10.1111/j.2517-6161.1995.tb02031.x.
 *
 * @param adjusted p values in the order given, 0 to 1, none below its p; a test is flagged when its adjusted p is at
 *     most q
 */
public record FalseDiscovery(List<Double> adjusted) {

    /**
     * The adjusted p values.
     *
     * @param p values from 0 to 1, at least one
     * @return one adjusted value for each
     * @throws IllegalArgumentException when there is none or one is out of its range
     */
    public static FalseDiscovery of(double... p) {
        Require.that(p.length >= 1, "The list of p values is empty.");
        for (double value : p) {
            Require.probability("A p value", value);
        }
        List<Integer> order = IntStream.range(0, p.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -p[i]))
                .toList();
        Double[] adjusted = new Double[p.length];
        double least = 1;
        for (int k = 0; k < p.length; k++) {
            int i = order.get(k);
            least = Math.min(least, p[i] * p.length / (p.length - k));
            adjusted[i] = least;
        }
        return new FalseDiscovery(Arrays.asList(adjusted));
    }

    /**
     * {@return the number of tests flagged, those with an adjusted p of {@code q} or less}
     *
     * @param q false-discovery rate, strictly between 0 and 1
     * @throws IllegalArgumentException when it is out of its range
     */
    public int flagged(double q) {
        Require.insideUnit("The false-discovery rate", q);
        return (int) adjusted.stream().filter(p -> p <= q).count();
    }

    /**
     * {@return the number of tests that Bonferroni's correction would flag, those with m p of {@code q} or less; 0
     * without tests}
     *
     * @param q level of the whole family, strictly between 0 and 1
     * @param p values; not checked, NaN is never flagged
     * @throws IllegalArgumentException when {@code q} is out of its range
     */
    public static int flaggedByBonferroni(double q, double... p) {
        Require.insideUnit("The level", q);
        return (int) Arrays.stream(p).filter(value -> value * p.length <= q).count();
    }
}
