package org.scrubline.scoring.curve;

/**
 * What is known of the severities of some supervisors before the scores at hand: a joint normal law.
 *
 * @param size number of supervisors
 * @param mean one a supervisor, in logits
 * @param precision inverse covariance, size × size by rows
 * @param logDeterminant log of the determinant of {@code precision}
 */
@SuppressWarnings("ArrayRecordComponent") // internal to the kernels, never compared or exposed
record SeverityPrior(int size, double[] mean, double[] precision, double logDeterminant) {

    /** Independent, mean 0. */
    static SeverityPrior independent(int size, double variance) {
        double[] precision = new double[size * size];
        for (int v = 0; v < size; v++) {
            precision[v * size + v] = 1 / variance;
        }
        return new SeverityPrior(size, new double[size], precision, -size * Math.log(variance));
    }

    /** From a mean and covariance. */
    static SeverityPrior of(double[] mean, double[] covariance) {
        int size = mean.length;
        double[] factor = covariance.clone();
        double logDeterminant = -Dense.cholesky(factor, size);
        return new SeverityPrior(size, mean, Dense.inverse(factor, size, 0), logDeterminant);
    }
}
