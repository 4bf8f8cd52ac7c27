package org.scrubline.scoring.curve;

import java.util.List;
import java.util.Locale;

/**
 * How much the scores can carry, for one trainee and procedure. Assessments that await a second person count toward the
 * index alone.
 *
 * @param index share of the population's variance of the present level that the scores removed, 0 to below 1, {@code
 *     max(0, 1 - (1.12 sd)² / prior variance)}: bands with their factor against the bare prior, so 0 means no more than
 *     the population says
 * @param strength reading of the index
 * @param cases scored cases that count
 * @param scorers supervisors who scored them
 * @param largestShare largest share of these assessments by one supervisor, 0 to 1; 0 without any
 * @param reasons what is missing; empty when a decision may lean on the numbers
 */
public record Evidence(
        double index, Strength strength, int cases, int scorers, double largestShare, List<Reason> reasons) {

    /** Reading of the index, by the limits of {@link ProcedureStandard.Minimums}. */
    public enum Strength {
        /** Below the first limit: no modelled number is shown. */
        NOT_ENOUGH,
        /** From the first limit on: shown as provisional. */
        PROVISIONAL,
        /** From the second limit on. */
        REPORTABLE
    }

    /** Which minimum is missed. The first five hide numbers; the others keep them from supporting a decision. */
    public enum Kind {
        /** No score at all. */
        NO_ASSESSMENTS(true),
        /** Fewer scored cases than before a number is shown. */
        FEW_CASES(true),
        /** Fewer scorers than before a number is shown. */
        FEW_SCORERS(true),
        /** A critical step scored too seldom; the subject is the step. */
        CRITICAL_STEP_SELDOM_SEEN(true),
        /** The index is below the first limit. */
        WIDE_BAND(true),
        /** Fewer scored cases than a decision needs; looked at when nothing hides. */
        FEW_CASES_FOR_DECISION(false),
        /** Fewer scorers than a decision needs; looked at when nothing hides. */
        FEW_SCORERS_FOR_DECISION(false),
        /** One of several scorers gave more than the largest share. */
        ONE_SCORER_DOMINATES(false),
        /**
         * The programme falls into groups that share neither trainee nor scorer; have and need are the sizes of this
         * group and of the panel.
         */
        NOT_CONNECTED(false),
        /** A scorer of this trainee gives nobody anything but the highest level; the subject is the scorer. */
        TOP_SCORES_ONLY(false),
        /** A scorer of this trainee gives nobody anything but the lowest level; the subject is the scorer. */
        BOTTOM_SCORES_ONLY(false);

        private final boolean hides;

        Kind(boolean hides) {
            this.hides = hides;
        }

        /** {@return true when a modelled number must not be shown} */
        public boolean hides() {
            return hides;
        }
    }

    /**
     * One missed minimum.
     *
     * @param kind which
     * @param subject step or supervisor it concerns; empty when none
     * @param have what there is: a count, the index or a share
     * @param need what is needed, in the same unit; for the largest share what is allowed
     */
    public record Reason(Kind kind, String subject, double have, double need) {

        /** {@return the reason in one plain sentence} */
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

    /**
     * Copies the list and checks nothing.
     *
     * @param index kept
     * @param strength kept
     * @param cases kept
     * @param scorers kept
     * @param largestShare kept
     * @param reasons copied
     */
    public Evidence {
        reasons = List.copyOf(reasons);
    }

    /** {@return true when modelled numbers may be shown} */
    public boolean shown() {
        return reasons.stream().noneMatch(reason -> reason.kind().hides());
    }

    /** {@return true when a decision may lean on the numbers} */
    public boolean mayDecide() {
        return reasons.isEmpty();
    }

    /** {@return the whole statement in plain sentences, one for each reason} */
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
