package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import org.scrubline.casework.Reopening;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.SheetVersions;
import org.springframework.stereotype.Component;

/** Fills the draft of a new version from the version that counts, and empties it again. */
@Component
class VersionDrafts {

    private final SheetVersions sheets;
    private final Clock clock;

    VersionDrafts(SheetVersions sheets, Clock clock) {
        this.sheets = sheets;
        this.clock = clock;
    }

    void open(Standing standing, Reopening reopening) {
        sheets.reopen(counting(standing), reopening);
    }

    void drop(Standing standing) {
        sheets.drop(counting(standing));
    }

    /** Drops what somebody is writing whose turn it is no longer. */
    void dropOpen(Standing standing) {
        if (standing.sheet().state() == SheetState.REOPENED) {
            drop(standing);
        }
    }

    void markVoid(Standing standing) {
        sheets.markVoid(standing.sheet());
    }

    private Sheet counting(Standing standing) {
        return DraftContent.of(
                standing.newest(), standing.sheet(), clock.instant().truncatedTo(ChronoUnit.MICROS));
    }
}
