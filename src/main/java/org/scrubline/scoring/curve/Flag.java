package org.scrubline.scoring.curve;

import java.util.Locale;

/**
 * A prompt to look, never a verdict. Each kind states how often it is raised without cause, as measured on simulated
 * programmes whose truth differs from the model.
 *
 * @param kind what was noticed
 * @param subject supervisor or step it concerns; empty when it is the trainee
 * @param value the statistic
 * @param limit the limit it passed
 * @param where case at which it was first passed; empty when it concerns the whole record
 */
public record Flag(Kind kind, String subject, double value, double limit, String where) {

    /** What can be noticed. */
    public enum Kind {
        SCORES_DIFFER("6.5 % of supervisors who differ by less than .5 logit"),
        SCORING_SHIFTED("1.5 % of steady supervisors"),
        ONE_OVERALL_IMPRESSION("6 % of usual supervisors"),
        ONE_LEVEL_FOR_ALL("none of 272 usual supervisors"),
        FLATTER_THAN_EXPECTED("none of 272 usual supervisors"),
        BELOW_EXPECTATION(".30 per 100 cases"),
        DROP(".16 per 100 cases"),
        STANDARD_FAR(".026 of these reach the standard all the same"),
        STEP_SELDOM_SEEN("none: a count");

        private final String falseAlarms;

        Kind(String falseAlarms) {
            this.falseAlarms = falseAlarms;
        }

        /** How often it is raised without cause. */
        public String falseAlarms() {
            return falseAlarms;
        }
    }

    /** The prompt in one plain sentence. */
    public String sentence() {
        return switch (kind) {
            case SCORES_DIFFER ->
                "Supervisor " + subject + " scores " + (value > 0 ? "lower" : "higher") + " than colleagues by "
                        + number(Math.abs(value)) + " logits.";
            case SCORING_SHIFTED ->
                "Supervisor " + subject + " scores " + (value > 0 ? "lower" : "higher")
                        + " in the later half of the period than in the earlier, by " + number(Math.abs(value))
                        + " logits.";
            case ONE_OVERALL_IMPRESSION ->
                "Supervisor " + subject + " moves all steps of a case together more than colleagues do.";
            case ONE_LEVEL_FOR_ALL ->
                "Supervisor " + subject + " gives one level for all steps more often than the cases explain.";
            case FLATTER_THAN_EXPECTED ->
                "Scores of supervisor " + subject + " vary less within a case than the steps explain.";
            case BELOW_EXPECTATION -> "Since about case " + where + " scores lie below what the curve led to expect.";
            case DROP -> "At case " + where + " the level lies " + number(value) + " logits below an earlier one.";
            case STANDARD_FAR -> "At the present course the standard " + subject + " is not in sight.";
            case STEP_SELDOM_SEEN ->
                "Step " + subject + " was seen " + Math.round(value) + " times in the last 20 cases.";
        };
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
