package org.scrubline.scoring.curve;

import java.util.List;
import java.util.Locale;

/**
 * How much the scores can carry, for one trainee and procedure.
 *
 * @param index share of the population's variance of the present level that the scores removed, 0..1; bands with their
 *     factor against the bare prior, so 0 means no more than the population says
 * @param strength reading of the index
 * @param cases scored cases that count
 * @param scorers supervisors who scored them
 * @param largestShare largest share of assessments by one supervisor
 * @param reasons what is missing; empty when a decision may lean on the numbers
 */
public record Evidence(
        double index, Strength strength, int cases, int scorers, double largestShare, List<Reason> reasons) {

    /** Reading of the index. */
    public enum Strength {
        /** Below the first limit: no modelled number is shown. */
        NOT_ENOUGH,
        PROVISIONAL,
        REPORTABLE
    }

    /** Which minimum is missed. The first five hide numbers; the others keep them from supporting a decision. */
    public enum Kind {
        NO_ASSESSMENTS(true),
        FEW_CASES(true),
        FEW_SCORERS(true),
        CRITICAL_STEP_SELDOM_SEEN(true),
        WIDE_BAND(true),
        FEW_CASES_FOR_DECISION(false),
        FEW_SCORERS_FOR_DECISION(false),
        ONE_SCORER_DOMINATES(false),
        NOT_CONNECTED(false),
        TOP_SCORES_ONLY(false),
        BOTTOM_SCORES_ONLY(false);

        private final boolean hides;

        Kind(boolean hides) {
            this.hides = hides;
        }

        /** True when a modelled number must not be shown. */
        public boolean hides() {
            return hides;
        }
    }

    /**
     * One missed minimum.
     *
     * @param subject step or supervisor it concerns; empty when none
     * @param have what there is
     * @param need what is needed
     */
    public record Reason(Kind kind, String subject, double have, double need) {

        /** The reason in one plain sentence. */
        public String sentence() {
            return switch (kind) {
                case NO_ASSESSMENTS -> "No assessments yet; the band is what the programme's trainees have in common.";
                case FEW_CASES ->
                    count(have) + " scored cases; " + count(need) + " are needed before a number is shown.";
                case FEW_SCORERS ->
                    count(have) + " scorer(s); " + count(need) + " are needed before a number is shown.";
                case CRITICAL_STEP_SELDOM_SEEN ->
                    "Critical step " + subject + " was seen " + count(have) + " times; " + count(need) + " are needed.";
                case WIDE_BAND ->
                    "The band is still too wide: evidence index " + decimal(have) + ", " + decimal(need)
                            + " is needed.";
                case FEW_CASES_FOR_DECISION ->
                    count(have) + " scored cases; " + count(need) + " are needed to support a decision.";
                case FEW_SCORERS_FOR_DECISION ->
                    count(have) + " scorers; " + count(need) + " are needed to support a decision.";
                case ONE_SCORER_DOMINATES ->
                    "One scorer gave " + percent(have) + " of the assessments; at most " + percent(need)
                            + " may come from one.";
                case NOT_CONNECTED ->
                    "These scorers share no trainee with the others; a comparison rests on the programme's average only.";
                case TOP_SCORES_ONLY ->
                    "Scorer " + subject
                            + " gives only the highest level; the trainee's level cannot be told from the scorer's habit.";
                case BOTTOM_SCORES_ONLY ->
                    "Scorer " + subject
                            + " gives only the lowest level; the trainee's level cannot be told from the scorer's habit.";
            };
        }

        private static String count(double value) {
            return String.format(Locale.ROOT, "%.0f", value);
        }

        private static String decimal(double value) {
            return String.format(Locale.ROOT, "%.2f", value);
        }

        private static String percent(double value) {
            return String.format(Locale.ROOT, "%.0f %%", 100 * value);
        }
    }

    public Evidence {
        reasons = List.copyOf(reasons);
    }

    /** True when modelled numbers may be shown. */
    public boolean shown() {
        return reasons.stream().noneMatch(reason -> reason.kind().hides());
    }

    /** True when a decision may lean on the numbers. */
    public boolean mayDecide() {
        return reasons.isEmpty();
    }

    /** The whole statement in plain sentences. */
    public String statement() {
        if (reasons.isEmpty()) {
            return strength == Strength.REPORTABLE
                    ? "Enough cases and scorers."
                    : "Enough cases and scorers; provisional, because the band is still wide.";
        }
        StringBuilder text = new StringBuilder(shown() ? "" : "Too few cases or scorers to conclude.");
        for (Reason reason : reasons) {
            text.append(text.isEmpty() ? "" : " ").append(reason.sentence());
        }
        return text.toString();
    }
}
