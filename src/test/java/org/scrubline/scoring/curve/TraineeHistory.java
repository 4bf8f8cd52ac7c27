package org.scrubline.scoring.curve;

import java.util.List;

/**
 * One simulated trainee as every rule of decision sees it. Entry n of a list by cases is what is known, or true, after
 * n + 1 cases.
 *
 * @param programme the programme's number
 * @param truth true chance that the next case meets the standard on every critical step
 * @param assurance what the model says: probability that this chance reaches the wanted one
 * @param decidable whether the evidence gates hold
 * @param counted the cases a chart of plain results can use, in order
 * @param strictness mean severity of the scorers met, above the panel's, in logits
 */
record TraineeHistory(
        int programme,
        List<Double> truth,
        List<Double> assurance,
        List<Boolean> decidable,
        List<Counted> counted,
        double strictness) {

    /**
     * The plain result of a case in which most critical steps were seen, or one was failed: early cases in which the
     * supervisor does most of the work by plan say nothing.
     *
     * @param after number of cases with this one
     * @param failure whether a critical step was scored below the standard
     * @param mean mean score of the critical steps seen
     */
    record Counted(int after, boolean failure, double mean) {}

    private static final int SMOOTHED = 5;
    private static final int LASTING = 10;

    /** Number of cases after which the true chance, as a mean of five cases, stays wanted for ten; 0 when it never is. */
    int readyAfter(double wanted, int latest) {
        int lasting = 0;
        for (int n = SMOOTHED - 1; n < truth.size(); n++) {
            double mean = truth.subList(n - SMOOTHED + 1, n + 1).stream()
                    .mapToDouble(p -> p)
                    .average()
                    .orElseThrow();
            lasting = mean >= wanted ? lasting + 1 : 0;
            int first = n + 2 - lasting;
            if (lasting == LASTING) {
                return first <= latest ? first : 0;
            }
        }
        return 0;
    }
}
