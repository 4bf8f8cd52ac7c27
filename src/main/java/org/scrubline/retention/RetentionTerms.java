package org.scrubline.retention;

/**
 * How long a programme keeps what. Entries of the audit are kept as long as the newest record they prove.
 *
 * @param draftDays an open sheet without a change, 30 to 3650 days
 * @param recordYears signed scores and decisions after the end of training, 1 to 100 years
 * @param exportDays exported files, 1 to 365 days
 */
public record RetentionTerms(int draftDays, int recordYears, int exportDays) {

    /** Until a programme decides otherwise. Common practice, no source. */
    public static final RetentionTerms DEFAULT = new RetentionTerms(90, 6, 30);

    /** How many days before its removal the scorer of an open sheet is told. */
    public static final int TOLD_BEFORE_DAYS = 14;

    /** The terms as a value of the audit. */
    String value() {
        return draftDays + " d / " + recordYears + " y / " + exportDays + " d";
    }
}
