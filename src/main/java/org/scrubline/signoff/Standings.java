package org.scrubline.signoff;

import java.time.Clock;
import java.util.UUID;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.Sheets;
import org.scrubline.people.Settings;
import org.scrubline.platform.NotFound;
import org.springframework.stereotype.Component;

/** Reads where signed sheets stand. */
@Component
class Standings {

    private final Sheets sheets;
    private final SignedSheetQueries signed;
    private final VersionQueries versions;
    private final VoidQueries voids;
    private final ContestQueries contests;
    private final Settings settings;
    private final Clock clock;

    Standings(
            Sheets sheets,
            SignedSheetQueries signed,
            VersionQueries versions,
            VoidQueries voids,
            ContestQueries contests,
            Settings settings,
            Clock clock) {
        this.settings = settings;
        this.sheets = sheets;
        this.signed = signed;
        this.versions = versions;
        this.voids = voids;
        this.contests = contests;
        this.clock = clock;
    }

    Standing of(UUID sheet) {
        return of(sheets.get(sheet));
    }

    /** The same, kept from changing until the transaction ends: of many at once, one goes on and the others see it. */
    Standing held(UUID sheet) {
        return of(sheets.hold(sheet));
    }

    private Standing of(Sheet sheet) {
        SignedSheet newest = signed.newest(sheet.id()).orElseThrow(NotFound::new);
        return new Standing(
                sheet,
                newest,
                versions.authority(sheet.id()),
                voids.ofSheet(sheet.id()),
                contests.find(ContestQueries.Filter.sheet(sheet.id())),
                settings.of(newest.programmeId()),
                clock.instant());
    }
}
