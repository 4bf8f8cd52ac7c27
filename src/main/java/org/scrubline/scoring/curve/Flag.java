package org.scrubline.scoring.curve;

import java.util.Locale;

/**
 * A prompt to look, never a verdict. Each kind states how often it is raised without cause, as measured on simulated
 * programmes whose truth differs from the model.
 *
 * @param kind what was noticed
 * @param subject supervisor, step or standard it concerns; empty when it is the trainee
 * @param value the statistic
 * @param limit the limit it passed, upwards or downwards as the kind says
 * @param where a case: for {@link Kind#BELOW_EXPECTATION} the one at which the sum began to rise, for {@link Kind#DROP}
 *     the first at which the limit was passed; empty when it concerns the whole record
 */
public record Flag(Kind kind, String subject, double value, double limit, String where) {

    /** What can be noticed. */
    public enum Kind {
        /**
         * Severity less the panel's mean in logits, above 0 = scores lower; more than .7 away with probability above
         * .9.
         */
        SCORES_DIFFER("6.5 % of supervisors who differ by less than .5 logit"),
        /**
         * Severity of the later half of the own assessments less that of the earlier in logits; above .4 in size and
         * above 2 standard deviations.
         */
        SCORING_SHIFTED("1.5 % of steady supervisors"),
        /** Standardised distance of the log size of the whole-assessment effect from .25; above 1.28. */
        ONE_OVERALL_IMPRESSION("6 % of usual supervisors"),
        /** Standardised number of assessments of eight or more steps with one level for all; above 4. */
        ONE_LEVEL_FOR_ALL("none of 272 usual supervisors"),
        /** Squared residuals over what the model expects; below .9, from eight assessments on. */
        FLATTER_THAN_EXPECTED("none of 272 usual supervisors"),
        /** One-sided cumulative sum of standardised innovations; above 4. */
        BELOW_EXPECTATION(".30 per 100 cases"),
        /**
         * Fall of the case-by-case level below its best of three to fifteen assessments before, in logits; above .3 and
         * one standard deviation.
         */
        DROP(".16 per 100 cases"),
        /**
         * Probability to reach the standard within 60 cases; below .05, from ten cases on, where the forecast may be
         * shown.
         */
        STANDARD_FAR(".026 of these reach the standard all the same"),
        /** Scores of a step in the last 20 cases; below 3. */
        STEP_SELDOM_SEEN("none: a count");

        private final String falseAlarms;

        Kind(String falseAlarms) {
            this.falseAlarms = falseAlarms;
        }

        /** {@return how often it is raised without cause} */
        public String falseAlarms() {
            return falseAlarms;
        }
    }

    /** {@return the prompt in one plain sentence} */
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
