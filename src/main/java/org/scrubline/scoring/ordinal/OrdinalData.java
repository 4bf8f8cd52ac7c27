package org.scrubline.scoring.ordinal;

import java.util.Arrays;
import java.util.List;
import org.scrubline.scoring.Require;

/**
 * Ordered responses with their covariates.
 *
 * <p>Categories are the distinct responses in ascending order; at least two must occur. A category in between that does
 * not occur is left out, so thresholds are those between neighbouring categories that do. Everything is copied.
 */
public final class OrdinalData {
    private final int[] category;
    private final double[][] covariates;
    private final List<String> names;
    private final int categories;

    /**
     * Responses and covariates.
     *
     * @param y responses, whole or not, at least 3
     * @param covariates one row a response, one column a name; no intercept
     * @param names of the columns, all different (not checked: results of a name given twice would replace each other);
     *     may be empty
     * @throws IllegalArgumentException when responses are few or all equal, lengths differ, something is no number, or
     *     a covariate is the same for every response
     */
    public OrdinalData(double[] y, double[][] covariates, List<String> names) {
        Require.finite("The list of responses", y, 3);
        Require.sameLength("The list of responses", y.length, "the table of covariates", covariates.length);
        for (double[] row : covariates) {
            Require.sameLength("The list of names", names.size(), "a row of covariates", row.length);
            Require.finite("The covariates", row, 0);
        }
        double[] distinct = Arrays.stream(y).distinct().sorted().toArray();
        Require.that(distinct.length >= 2, "All responses are in one category, so there is nothing to model.");
        categories = distinct.length;
        category = Arrays.stream(y)
                .mapToInt(value -> Arrays.binarySearch(distinct, value))
                .toArray();
        this.covariates = Arrays.stream(covariates).map(double[]::clone).toArray(double[][]::new);
        this.names = List.copyOf(names);
        for (int k = 0; k < names.size(); k++) {
            int column = k;
            Require.that(
                    Arrays.stream(covariates)
                                    .mapToDouble(row -> row[column])
                                    .distinct()
                                    .count()
                            > 1,
                    "The covariate %s is the same for every response.",
                    names.get(k));
        }
    }

    int size() {
        return category.length;
    }

    int category(int i) {
        return category[i];
    }

    int thresholds() {
        return categories - 1;
    }

    List<String> names() {
        return names;
    }

    double[] row(int i) {
        return covariates[i];
    }

    /** The linear predictor of a response; coefficients start at index {@code thresholds()} of the parameters. */
    double predictor(int i, double[] parameters) {
        double eta = 0;
        for (int k = 0; k < names.size(); k++) {
            eta += covariates[i][k] * parameters[thresholds() + k];
        }
        return eta;
    }

    /** Thresholds of the pooled shares, then coefficients of 0. */
    double[] start(int parameters) {
        double[] start = new double[parameters];
        double below = 0;
        for (int j = 0; j < thresholds(); j++) {
            int threshold = j;
            below += Arrays.stream(category).filter(c -> c == threshold).count();
            start[j] = Math.log(below / (category.length - below));
        }
        return start;
    }
}
