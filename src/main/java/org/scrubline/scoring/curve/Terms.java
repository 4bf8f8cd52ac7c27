package org.scrubline.scoring.curve;

/**
 * Which random terms the model holds besides trainee level, severity, difficulty and complexity. A term that is left
 * out keeps its place with a standard deviation of 1e-4 logit, which changes the log-likelihood by less than 1e-4.
 *
 * @param growth gain with experience, individual per trainee
 * @param chain random walk along the cases
 * @param gap loss and extra wobble after months away
 * @param traineeStep a trainee's own strength or weakness on each step
 * @param traineeSupervisor how one supervisor sees one trainee
 * @param assessment one whole-assessment effect: the case and the scorer's overall impression
 */
public record Terms(
        boolean growth,
        boolean chain,
        boolean gap,
        boolean traineeStep,
        boolean traineeSupervisor,
        boolean assessment) {

    /** The full dynamic model. */
    public static final Terms FULL = new Terms(true, true, true, true, true, true);

    /** {@return true when a trainee has one level for all cases} */
    public boolean isStatic() {
        return !growth && !chain && !gap;
    }
}
