package org.scrubline.scoring.mixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The restricted log-likelihood of crossed random intercepts as a function of the ratios of their standard deviations to
 * the residual one, intercept and residual variance profiled out: with A = D Z'Z D + I for D of those ratios, the
 * criterion is log|A| + log r² + (n - 1) (1 + log(2 pi s / (n - 1))), s the penalised residual sum of squares and r² the
 * precision of the intercept.
 */
final class ProfiledLikelihood {
    private final double[] centred;
    private final double[] ones;
    private final double[] responses;
    private final int[] factorOfColumn;
    private final int[][] pairs;
    private final double[] pairCounts;
    private final SparseCholesky factor;
    private final double totalSquares;
    private final double mean;

    /** Results at one vector of ratios. */
    record Fit(double criterion, double residualVariance, double intercept, double interceptError) {}

    ProfiledLikelihood(double[] y, List<int[]> levels, int[] sizes) {
        mean = Arrays.stream(y).average().orElse(0);
        centred = Arrays.stream(y).map(value -> value - mean).toArray();
        totalSquares = Arrays.stream(centred).map(e -> e * e).sum();
        int[] first = new int[sizes.length + 1];
        for (int f = 0; f < sizes.length; f++) {
            first[f + 1] = first[f] + sizes[f];
        }
        int columns = first[sizes.length];
        factorOfColumn = new int[columns];
        ones = new double[columns];
        responses = new double[columns];
        Map<Long, Integer> counts = new TreeMap<>();
        for (int i = 0; i < y.length; i++) {
            for (int f = 0; f < sizes.length; f++) {
                int column = first[f] + levels.get(f)[i];
                factorOfColumn[column] = f;
                ones[column]++;
                responses[column] += centred[i];
                for (int g = 0; g < f; g++) {
                    counts.merge((long) column * columns + first[g] + levels.get(g)[i], 1, Integer::sum);
                }
            }
        }
        pairs = counts.keySet().stream()
                .map(key -> new int[] {(int) (key / columns), (int) (key % columns)})
                .toArray(int[][]::new);
        pairCounts = counts.values().stream().mapToDouble(Integer::doubleValue).toArray();
        factor = new SparseCholesky(neighbours(columns, pairs));
    }

    private static List<Set<Integer>> neighbours(int columns, int[][] pairs) {
        List<Set<Integer>> neighbours = new ArrayList<>();
        for (int c = 0; c < columns; c++) {
            neighbours.add(new HashSet<>());
        }
        for (int[] pair : pairs) {
            neighbours.get(pair[0]).add(pair[1]);
            neighbours.get(pair[1]).add(pair[0]);
        }
        return neighbours;
    }

    Fit at(double[] ratios) {
        int n = centred.length;
        factor.clear();
        double[] forOnes = new double[ones.length];
        double[] forResponses = new double[ones.length];
        for (int c = 0; c < ones.length; c++) {
            double ratio = ratios[factorOfColumn[c]];
            factor.add(c, c, 1 + ratio * ratio * ones[c]);
            forOnes[factor.position(c)] = ratio * ones[c];
            forResponses[factor.position(c)] = ratio * responses[c];
        }
        for (int k = 0; k < pairs.length; k++) {
            double product = ratios[factorOfColumn[pairs[k][0]]] * ratios[factorOfColumn[pairs[k][1]]];
            factor.add(pairs[k][0], pairs[k][1], product * pairCounts[k]);
        }
        double logDeterminant = factor.factorise();
        factor.solveLower(forOnes);
        factor.solveLower(forResponses);
        double precision = n;
        double cross = 0;
        double squares = totalSquares;
        for (int c = 0; c < ones.length; c++) {
            precision -= forOnes[c] * forOnes[c];
            cross -= forOnes[c] * forResponses[c];
            squares -= forResponses[c] * forResponses[c];
        }
        double shift = cross / precision;
        squares -= shift * cross;
        double residual = squares / (n - 1);
        double criterion = logDeterminant + Math.log(precision) + (n - 1) * (1 + Math.log(2 * Math.PI * residual));
        return new Fit(criterion, residual, mean + shift, Math.sqrt(residual / precision));
    }
}
