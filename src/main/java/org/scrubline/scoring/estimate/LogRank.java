package org.scrubline.scoring.estimate;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;

/**
 * The log-rank test: whether groups differ in their time to an event.
 *
 * <p>At each event time with d events among n at risk, a group with n_g at risk expects d n_g / n; the differences
 * observed - expected, summed over time, with their hypergeometric covariance d (n - d) / (n - 1) x n_g / n (1[g = h] -
 * n_h / n), give a chi-squared statistic with groups - 1 degrees of freedom. Someone censored at an event time is still
 * at risk then; tied events are taken together. The statistic is empty without events and when the covariance leaves a
 * group apart, as when it has nobody at risk together with another. Its law is chi-squared for many events only.
 *
 * <p>Mantel, Cancer Chemother Rep 1966;50:163.
 *
 * @param groups names in alphabetical order, with observed and expected events; both sum to the same
 * @param chiSquared statistic, 0 or more but for rounding; empty when there is nothing to compare
 * @param degrees of freedom, groups - 1
 * @param p upper tail, 0 to 1; empty with the statistic
 */
public record LogRank(Map<String, Events> groups, OptionalDouble chiSquared, int degrees, OptionalDouble p) {

    /**
     * Events of a group.
     *
     * @param observed number seen
     * @param expected number if groups did not differ
     */
    public record Events(double observed, double expected) {}

    /**
     * The test.
     *
     * @param times to the event or the end of waiting, one for each person, 0 or more, any unit
     * @param events whether the time ended in the event (true) or is censored (false)
     * @param group name of each person's group, at least two different
     * @return groups and statistic
     * @throws IllegalArgumentException when lists are empty or differ in length, a time is negative or no number, or
     *     there is one group only
     */
    public static LogRank of(double[] times, boolean[] events, List<String> group) {
        SurvivalCurve.requirePeople(times, events);
        Require.sameLength("The list of times", times.length, "the list of groups", group.size());
        List<String> names = new ArrayList<>(new TreeSet<>(group));
        Require.that(names.size() >= 2, "A comparison needs at least 2 groups, but has %s.", names.size());
        double[] observed = new double[names.size()];
        double[] expected = new double[names.size()];
        RealMatrix covariance = MatrixUtils.createRealMatrix(names.size(), names.size());
        for (double time : SurvivalCurve.eventTimes(times, events)) {
            double[] atRisk = new double[names.size()];
            double dead = 0;
            double all = 0;
            for (int i = 0; i < times.length; i++) {
                if (times[i] >= time) {
                    int own = names.indexOf(group.get(i));
                    atRisk[own]++;
                    all++;
                    boolean now = events[i] && times[i] == time;
                    observed[own] += now ? 1 : 0;
                    dead += now ? 1 : 0;
                }
            }
            add(covariance, expected, atRisk, dead, all);
        }
        return tested(names, observed, expected, covariance);
    }

    private static void add(RealMatrix covariance, double[] expected, double[] atRisk, double dead, double all) {
        double spread = all > 1 ? dead * (all - dead) / (all - 1) : 0;
        for (int g = 0; g < atRisk.length; g++) {
            double share = atRisk[g] / all;
            expected[g] += dead * share;
            for (int h = 0; h < atRisk.length; h++) {
                covariance.addToEntry(g, h, spread * share * ((g == h ? 1 : 0) - atRisk[h] / all));
            }
        }
    }

    private static LogRank tested(List<String> names, double[] observed, double[] expected, RealMatrix covariance) {
        Map<String, Events> groups = new LinkedHashMap<>();
        double[] differences = new double[names.size()];
        for (int g = 0; g < differences.length; g++) {
            groups.put(names.get(g), new Events(observed[g], expected[g]));
            differences[g] = observed[g] - expected[g];
        }
        // Rows of the covariance sum to 0; the pseudo-inverse leaves that direction out.
        SingularValueDecomposition decomposition = new SingularValueDecomposition(covariance);
        int rank = decomposition.getRank();
        if (rank < names.size() - 1) {
            return new LogRank(groups, OptionalDouble.empty(), names.size() - 1, OptionalDouble.empty());
        }
        RealVector difference = MatrixUtils.createRealVector(differences);
        double chiSquared = difference.dotProduct(generalisedSolve(decomposition, difference, names.size() - 1));
        return new LogRank(
                groups,
                OptionalDouble.of(chiSquared),
                names.size() - 1,
                OptionalDouble.of(Distributions.chiSquaredUpper(chiSquared, names.size() - 1.0)));
    }

    private static RealVector generalisedSolve(SingularValueDecomposition svd, RealVector right, int rank) {
        RealVector solution = right.mapMultiply(0);
        for (int k = 0; k < rank; k++) {
            double along = svd.getU().getColumnVector(k).dotProduct(right) / svd.getSingularValues()[k];
            solution = solution.add(svd.getV().getColumnVector(k).mapMultiply(along));
        }
        return solution;
    }
}
