package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * Posterior covariances of one trainee at the mode, from the factor of the last sweep and the covariance of the
 * severities. A contrast e'b + (walk of case i), with b the border and severities counted into it, has variance
 * {@code (e - K_i)' Cov (e - K_i) + t_i}.
 */
final class TraineeSpread {

    final TraineeWork work;

    /** κ times the columns of the inverse border matrix at the supervisors met, met × B. */
    final double[][] pairPull;

    /** Covariance of the border with severities counted in, B × B. */
    double[][] covariance = new double[0][];

    /** Regression of the walk on the border, cases × B. */
    final double[] regression;

    /** Variance of the walk given the border, and its covariance with the next case's. */
    final double[] rest;

    final double[] restNext;

    private final double[] contrast;
    private final double[] image;

    TraineeSpread(TraineeWork work) {
        this.work = work;
        pairPull = new double[work.supervisors.length][work.border];
        regression = new double[work.cases * work.border];
        rest = new double[work.cases];
        restNext = new double[work.cases];
        contrast = new double[work.border];
        image = new double[work.border];
    }

    /** @param severity covariance of the severities of the supervisors met, met × met */
    void compute(double[] severity) {
        TraineeWork t = work;
        int b = t.border;
        int met = t.supervisors.length;
        covariance = Dense.inverseRows(t.matrix, b, 0);
        for (int v = 0; v < met; v++) {
            for (int r = 0; r < b; r++) {
                pairPull[v][r] = t.pairPrecision * covariance[r][t.pairColumn + v];
            }
        }
        double[] half = new double[met];
        for (int r = 0; r < b; r++) {
            Arrays.fill(half, 0);
            for (int v = 0; v < met; v++) {
                Dense.add(half, 0, severity, v * met, 0, met, pairPull[v][r]);
            }
            Dense.addRows(covariance[r], pairPull, 0, met, half);
        }
        chain();
    }

    private void chain() {
        TraineeWork t = work;
        int b = t.border;
        for (int i = t.cases - 1; i >= 0; i--) {
            double inverse = 1 / t.pivot[i];
            Arrays.fill(regression, i * b, (i + 1) * b, 0);
            Dense.add(regression, i * b, t.coupling, i * b, 0, b, inverse);
            rest[i] = inverse;
            if (i < t.cases - 1) {
                double m = t.off[i] * inverse;
                Dense.subtract(regression, i * b, regression, (i + 1) * b, 0, b, m);
                rest[i] += m * m * rest[i + 1];
                restNext[i] = -m * rest[i + 1];
            }
        }
    }

    /**
     * Border contrast of the trainee's level at case i, seen by one supervisor or by none.
     *
     * @param pair column among the supervisors met, or -1 for none
     */
    double[] contrast(int i, int pair) {
        Arrays.fill(contrast, 0);
        contrast[0] = 1;
        contrast[1] = work.growth[i];
        if (pair >= 0) {
            contrast[work.pairColumn + pair] = 1;
        }
        Dense.subtract(contrast, 0, regression, i * work.border, 0, work.border, 1);
        return contrast;
    }

    /** Covariance times a contrast; the array is reused by the next call. */
    double[] image(double[] e) {
        Dense.multiply(covariance, e, image);
        return image;
    }

    /** Variance of the walk's rise into case i. */
    double riseVariance(int i) {
        int b = work.border;
        System.arraycopy(regression, i * b, contrast, 0, b);
        double conditional = rest[i];
        if (i > 0) {
            Dense.subtract(contrast, 0, regression, (i - 1) * b, 0, b, 1);
            conditional += rest[i - 1] - 2 * restNext[i - 1];
        }
        return Dense.dot(contrast, 0, image(contrast), 0, b) + conditional;
    }
}
