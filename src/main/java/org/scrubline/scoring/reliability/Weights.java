package org.scrubline.scoring.reliability;

import org.scrubline.scoring.Require;

/**
 * Agreement weights of kappa: 1 for full agreement, less for each kind of disagreement. Named weights fit any number of
 * categories, matrices their own. For the quadratic weights categories are taken as equally spaced.
 */
public final class Weights {
    private interface Weight {
        double of(int row, int column, int categories);
    }

    /** Only full agreement counts: 1 on the diagonal, else 0. */
    public static final Weights UNWEIGHTED = new Weights((i, j, q) -> i == j ? 1 : 0, 0);

    /** Falls with the distance of the categories: 1 - |i - j| / (q - 1). */
    public static final Weights LINEAR = new Weights((i, j, q) -> 1 - Math.abs(i - j) / (q - 1.0), 0);

    /** Falls with the squared distance of the categories: 1 - ((i - j) / (q - 1))². */
    public static final Weights QUADRATIC = new Weights((i, j, q) -> 1 - TwoWayTable.square((i - j) / (q - 1.0)), 0);

    private final Weight weight;
    private final int size;

    private Weights(Weight weight, int size) {
        this.weight = weight;
        this.size = size;
    }

    /**
     * Agreement weights as they are.
     *
     * @param matrix q x q, q at least 2, copied; 1 on the diagonal and at most 1 elsewhere is expected, not checked;
     *     need not be symmetric
     * @return the weights
     * @throws IllegalArgumentException when it is smaller, not square or holds something that is no number
     */
    public static Weights agreement(double[][] matrix) {
        double[][] weights = copy(matrix);
        return new Weights((i, j, q) -> weights[i][j], matrix.length);
    }

    /**
     * Disagreement weights, 0 for none: each becomes 1 - d / the largest d.
     *
     * @param matrix q x q, q at least 2, copied; 0 or more, not all 0; 0 on the diagonal is expected, not checked
     * @return the agreement weights
     * @throws IllegalArgumentException when it is smaller, not square, negative somewhere, all 0 or holds something
     *     that is no number
     */
    public static Weights disagreement(double[][] matrix) {
        double[][] distances = copy(matrix);
        double largest = 0;
        for (double[] row : distances) {
            for (double distance : row) {
                Require.that(distance >= 0, "A disagreement weight is negative: %s.", distance);
                largest = Math.max(largest, distance);
            }
        }
        double scale = Require.positive("The largest disagreement weight", largest);
        return new Weights((i, j, q) -> 1 - distances[i][j] / scale, matrix.length);
    }

    private static double[][] copy(double[][] matrix) {
        Require.table("The matrix of weights", matrix, 2, 2);
        Require.that(matrix.length == matrix[0].length, "The matrix of weights must be square.");
        double[][] copy = new double[matrix.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = matrix[i].clone();
        }
        return copy;
    }

    double[][] matrix(int categories) {
        Require.that(
                size == 0 || size == categories,
                "The matrix of weights is made for %s categories, the table has %s.",
                size,
                categories);
        double[][] matrix = new double[categories][categories];
        for (int i = 0; i < categories; i++) {
            for (int j = 0; j < categories; j++) {
                matrix[i][j] = weight.of(i, j, categories);
            }
        }
        return matrix;
    }
}
