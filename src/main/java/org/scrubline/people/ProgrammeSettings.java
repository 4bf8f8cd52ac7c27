package org.scrubline.people;

import java.time.Duration;
import java.util.Map;
import org.scrubline.platform.Role;

/**
 * The numbers one programme works by now. What was signed was judged by those of its time and stays so.
 *
 * @param changed values that differ from the defaults, or once did
 * @param here defaults of this installation that differ from the project's
 */
public record ProgrammeSettings(Map<SettingKey, Integer> changed, Map<SettingKey, Integer> here) {

    /** Nothing changed. */
    public static final ProgrammeSettings DEFAULTS = new ProgrammeSettings(Map.of());

    private static final int DAYS_A_WEEK = 7;
    private static final double PERCENT = 100;

    public ProgrammeSettings {
        changed = Map.copyOf(changed);
        here = Map.copyOf(here);
    }

    /** On an installation with the project's own defaults. */
    public ProgrammeSettings(Map<SettingKey, Integer> changed) {
        this(changed, Map.of());
    }

    /** The number in the key's unit. */
    public int value(SettingKey key) {
        return changed.getOrDefault(key, usual(key));
    }

    /** The value until a programme sets another. */
    public int usual(SettingKey key) {
        return here.getOrDefault(key, key.usual());
    }

    /** Whether people of a role must show a second factor at log-in. */
    public boolean secondFactor(Role role) {
        return value(SettingKey.secondFactor(role)) == 1;
    }

    public Duration lateAfter() {
        return Duration.ofHours(value(SettingKey.LATE_AFTER));
    }

    public Duration closedAfter() {
        return Duration.ofDays(value(SettingKey.CLOSED_AFTER));
    }

    public Duration clockSkew() {
        return Duration.ofMinutes(value(SettingKey.CLOCK_SKEW));
    }

    /** Signed sheets from which on a supervisor is no new scorer any more. */
    public int newScorerUntil() {
        return value(SettingKey.NEW_SCORER_UNTIL);
    }

    public boolean introductionFirst() {
        return value(SettingKey.INTRODUCTION_FIRST) == 1;
    }

    public Duration contestWithin() {
        return Duration.ofDays(value(SettingKey.CONTEST_WITHIN));
    }

    public Duration contestTerm() {
        return Duration.ofDays(value(SettingKey.CONTEST_TERM));
    }

    public Duration contestReply() {
        return Duration.ofDays(value(SettingKey.CONTEST_REPLY));
    }

    public int chartCases() {
        return value(SettingKey.CHART_CASES);
    }

    public int shownCases() {
        return value(SettingKey.SHOWN_CASES);
    }

    public int shownScorers() {
        return value(SettingKey.SHOWN_SCORERS);
    }

    public int shownStepScores() {
        return value(SettingKey.SHOWN_STEP_SCORES);
    }

    /** Evidence index from which on a modelled number is shown, 0 to 1. */
    public double shownIndex() {
        return value(SettingKey.SHOWN_INDEX) / PERCENT;
    }

    public int supportsCases() {
        return value(SettingKey.SUPPORTS_CASES);
    }

    public int supportsScorers() {
        return value(SettingKey.SUPPORTS_SCORERS);
    }

    /** The most sheets that may come from one supervisor, in percent. */
    public int mostByOne() {
        return value(SettingKey.MOST_BY_ONE);
    }

    public Duration gapShown() {
        return Duration.ofDays(value(SettingKey.GAP_SHOWN));
    }

    public Duration gapSuspends() {
        return Duration.ofDays((long) DAYS_A_WEEK * value(SettingKey.GAP_SUSPENDS));
    }

    public int quorum() {
        return value(SettingKey.QUORUM);
    }

    public boolean scorersVote() {
        return value(SettingKey.SCORERS_VOTE) == 1;
    }

    /** Working days within which the letter about a decision goes out. */
    public int letterWithinWorkingDays() {
        return value(SettingKey.LETTER_WITHIN);
    }

    public Duration appealWithin() {
        return Duration.ofDays(value(SettingKey.APPEAL_WITHIN));
    }

    /** The smallest number of people a table on groups shows. */
    public int smallestGroup() {
        return value(SettingKey.SMALLEST_GROUP);
    }

    /** The share of experts, in percent, from which on a round speaks for keeping a step. */
    public int stepKept() {
        return value(SettingKey.STEP_KEPT);
    }

    /** Judged cases from which on rates of a trainee's outcomes are shown. */
    public int outcomeCases() {
        return value(SettingKey.OUTCOME_CASES);
    }

    /** The pressure, in mmHg, at or below which an early one is counted as too low. */
    public int lowPressureAt() {
        return value(SettingKey.LOW_PRESSURE_AT);
    }

    /** The lowest pressure, in mmHg, a success may have. */
    public int successLowest() {
        return value(SettingKey.SUCCESS_LOWEST);
    }
}
