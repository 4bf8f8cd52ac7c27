package org.scrubline.cohort;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.signoff.SignedSheet;

/**
 * Whether sheets are signed in time. The denominator is every sheet asked for, signed or not.
 *
 * @param withinDay signed within 24 hours of the end of the case
 * @param within72Hours signed later, not yet late
 * @param late signed as a late entry
 * @param waiting not signed, still open to its scorer
 * @param never not signed, closed by time
 */
public record Timeliness(int withinDay, int within72Hours, int late, int waiting, int never) {

    private static final Duration DAY = Duration.ofHours(24);

    /**
     * @param unsigned ends of the cases whose sheet is still open, one entry a sheet
     */
    static Timeliness of(List<SignedSheet> signed, List<Instant> unsigned, Instant now, ProgrammeSettings settings) {
        int late = (int) signed.stream().filter(SignedSheet::late).count();
        int withinDay = (int) signed.stream()
                .filter(sheet -> !sheet.late() && withinDay(sheet))
                .count();
        int never = (int) unsigned.stream()
                .filter(ended -> Duration.between(ended, now).compareTo(settings.closedAfter()) > 0)
                .count();
        return new Timeliness(withinDay, signed.size() - late - withinDay, late, unsigned.size() - never, never);
    }

    /** A new version is no later than the first one was. */
    private static boolean withinDay(SignedSheet sheet) {
        return Duration.between(sheet.caseEndedAt(), sheet.firstSignedAt()).compareTo(DAY) <= 0;
    }

    /** Every sheet asked for. */
    public int sheets() {
        return withinDay + within72Hours + late + waiting + never;
    }

    /** A part of all sheets in whole percent; 0 when there is none. */
    public int percent(int part) {
        return sheets() == 0 ? 0 : Math.round(100f * part / sheets());
    }
}
