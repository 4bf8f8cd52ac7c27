package org.scrubline.people;

import org.scrubline.platform.Role;

/**
 * The numbers a programme works by. Every default is this project's own, without an outside source, and meant to be
 * looked at by the programme; what is stored is a whole number of the unit.
 */
public enum SettingKey {
    /** From here on a signature is a late entry. */
    LATE_AFTER(Unit.HOURS, 1, 168, 72),
    /** From here on signing needs a director's release. */
    CLOSED_AFTER(Unit.DAYS, 7, 90, 14),
    /** How far a device's clock may be from the server's before it is flagged. */
    CLOCK_SKEW(Unit.MINUTES, 1, 60, 10),
    /** Until a supervisor has signed so many sheets of the programme, each needs a countersignature. */
    NEW_SCORER_UNTIL(Unit.SHEETS, 0, 100, 10),
    /** Whether a supervisor must have been introduced to scoring before signing: 1 for yes. */
    INTRODUCTION_FIRST(Unit.YES_NO, 0, 1, 0),
    /** How long after a version was signed the trainee may contest it. */
    CONTEST_WITHIN(Unit.DAYS, 7, 180, 28),
    /** How long a contest may take; its last day is fixed when it is opened. */
    CONTEST_TERM(Unit.DAYS, 7, 180, 30),
    /** After this long without a reply, or at once when the scorer has left, a contest goes on without it. */
    CONTEST_REPLY(Unit.DAYS, 1, 60, 7),
    /** Number of cases the control chart is planned for, and for which its limit is made. */
    CHART_CASES(Unit.CASES, 10, 100, 30),
    SHOWN_CASES(Unit.CASES, 3, 10, 5),
    SHOWN_SCORERS(Unit.PEOPLE, 2, 3, 2),
    SHOWN_STEP_SCORES(Unit.SCORES, 2, 10, 3),
    SHOWN_INDEX(Unit.PERCENT, 30, 80, 50),
    SUPPORTS_CASES(Unit.CASES, 10, 60, 12),
    SUPPORTS_SCORERS(Unit.PEOPLE, 3, 12, 4),
    MOST_BY_ONE(Unit.PERCENT, 20, 60, 40),
    /** A longer time without a case is shown as a gap. */
    GAP_SHOWN(Unit.DAYS, 14, 365, 56),
    /** After a longer time without a case a suspension is proposed. */
    GAP_SUSPENDS(Unit.WEEKS, 4, 104, 26),
    QUORUM(Unit.PEOPLE, 2, 15, 3),
    /** Whether somebody who scored a trainee may vote on that trainee: 1 for yes. */
    SCORERS_VOTE(Unit.YES_NO, 0, 1, 1),
    LETTER_WITHIN(Unit.WORKING_DAYS, 1, 60, 10),
    APPEAL_WITHIN(Unit.DAYS, 7, 180, 28),
    /** Tables on groups of trainees hide smaller numbers. */
    SMALLEST_GROUP(Unit.PEOPLE, 3, 20, 5),
    /** From this share of experts on who call a step relevant, an expert round speaks for keeping it. */
    STEP_KEPT(Unit.PERCENT, 50, 100, 80),
    /** Rates of a trainee’s outcomes are shown from so many judged cases on. */
    OUTCOME_CASES(Unit.CASES, 10, 100, 30),
    /** A pressure so low or lower in the first two weeks is counted as an early event. */
    LOW_PRESSURE_AT(Unit.MMHG, 2, 8, 5),
    /** The lowest pressure a success may have. */
    SUCCESS_LOWEST(Unit.MMHG, 0, 8, 6),
    /** Whether people of this role must show a second factor at log-in: 1 for yes. An installation has its own defaults. */
    SECOND_FACTOR_SUPERVISOR(Unit.YES_NO, 0, 1, 0),
    SECOND_FACTOR_TRAINEE(Unit.YES_NO, 0, 1, 0),
    SECOND_FACTOR_DIRECTOR(Unit.YES_NO, 0, 1, 0),
    SECOND_FACTOR_COMMITTEE_MEMBER(Unit.YES_NO, 0, 1, 0),
    SECOND_FACTOR_ADMINISTRATOR(Unit.YES_NO, 0, 1, 0),
    SECOND_FACTOR_VISITOR(Unit.YES_NO, 0, 1, 0),
    SECOND_FACTOR_ANALYST(Unit.YES_NO, 0, 1, 0);

    /** What a value counts. */
    public enum Unit {
        MINUTES,
        HOURS,
        DAYS,
        WORKING_DAYS,
        WEEKS,
        CASES,
        SHEETS,
        SCORES,
        PEOPLE,
        PERCENT,
        MMHG,
        YES_NO
    }

    private final Unit unit;
    private final int least;
    private final int most;
    private final int usual;

    SettingKey(Unit unit, int least, int most, int usual) {
        this.unit = unit;
        this.least = least;
        this.most = most;
        this.usual = usual;
    }

    public Unit unit() {
        return unit;
    }

    /** The smallest value that can be set. */
    public int least() {
        return least;
    }

    /** The largest value that can be set. */
    public int most() {
        return most;
    }

    /** The value until a programme sets another. */
    public int usual() {
        return usual;
    }

    /** Whether people of a role must show a second factor. */
    public static SettingKey secondFactor(Role role) {
        return valueOf("SECOND_FACTOR_" + role.name());
    }

    boolean takes(int value) {
        return value >= least && value <= most;
    }
}
