package org.scrubline.scoring.curve;

import java.util.List;

/**
 * Supervisors linked with each other through shared trainees, with their joint normal law given all scores. One without
 * scores is a group alone, with the prior's law.
 *
 * @param supervisors ids, sorted
 * @param severity posterior means; above 0 = scores lower than colleagues, in logits
 * @param precision joint posterior precision, R × R by rows, R the number of supervisors
 * @param covarianceSum sum of all entries of the joint covariance
 * @param shares what each trainee's scores contributed; empty without scores
 */
public record SeverityGroup(
        List<String> supervisors,
        List<Double> severity,
        List<Double> precision,
        double covarianceSum,
        List<Share> shares) {

    /**
     * One trainee's part: taken out again when that trainee is smoothed, so nobody's scores count twice.
     *
     * @param trainee id
     * @param supervisors places in the group of the supervisors met
     * @param pull gradient by their severities at the mode, one each
     * @param information curvature by their severities, met × met by rows
     */
    public record Share(String trainee, List<Integer> supervisors, List<Double> pull, List<Double> information) {
        /**
         * Copies the lists and checks nothing.
         *
         * @param trainee kept
         * @param supervisors copied
         * @param pull copied
         * @param information copied
         */
        public Share {
            supervisors = List.copyOf(supervisors);
            pull = List.copyOf(pull);
            information = List.copyOf(information);
        }
    }

    /**
     * Copies the lists and checks nothing.
     *
     * @param supervisors copied
     * @param severity copied
     * @param precision copied
     * @param covarianceSum kept
     * @param shares copied
     */
    public SeverityGroup {
        supervisors = List.copyOf(supervisors);
        severity = List.copyOf(severity);
        precision = List.copyOf(precision);
        shares = List.copyOf(shares);
    }

    /** Joint posterior covariance, R × R by rows. */
    double[] covariance() {
        double[] factor = PsiLayout.array(precision);
        Dense.cholesky(factor, supervisors.size());
        return Dense.inverse(factor, supervisors.size(), 0);
    }
}
