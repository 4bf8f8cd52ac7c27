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
 * <p>Benjamini and Hochberg, J R Stat Soc B 1995;57:289, doi:10.1111/j.2517-6161.1995.tb02031.x.
 *
 * @param adjusted p values in the order given; a test is flagged when its adjusted p is at most q
 */
public record FalseDiscovery(List<Double> adjusted) {

    /** From p values, at least one. */
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

    /** Number of tests flagged at a false-discovery rate of {@code q}. */
    public int flagged(double q) {
        Require.insideUnit("The false-discovery rate", q);
        return (int) adjusted.stream().filter(p -> p <= q).count();
    }

    /** Number of tests that Bonferroni's correction would flag at level {@code q}. */
    public static int flaggedByBonferroni(double q, double... p) {
        Require.insideUnit("The level", q);
        return (int) Arrays.stream(p).filter(value -> value * p.length <= q).count();
    }
}
