package org.scrubline.scoring.curve;

/**
 * What is known of the trainee for the next case, as a joint normal law of: the common location of all steps as the
 * reference supervisor would see a reference case, the individual gain, and the own effects on the critical steps.
 *
 * @param mean common, gain, effects; length 2 + number of critical steps
 * @param covariance full, by rows
 * @param experience cases done before the next one
 */
@SuppressWarnings("ArrayRecordComponent") // internal to the kernels, never compared or exposed
record NextCase(double[] mean, double[] covariance, double experience) {

    int size() {
        return mean.length;
    }

    int critical() {
        return mean.length - 2;
    }
}
