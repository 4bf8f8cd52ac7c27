package org.scrubline.signoff;

import java.util.Optional;
import org.scrubline.casework.Sheet;
import org.scrubline.platform.Refusal;
import org.springframework.stereotype.Component;

/** What stands against signing a new version at this moment. */
@Component
class VersionObstacles {

    private final Standings standings;

    VersionObstacles(Standings standings) {
        this.standings = standings;
    }

    /** Empty for a sheet that is signed for the first time. */
    Optional<Refusal> obstacle(Sheet sheet) {
        if (sheet.reopening() == null) {
            return Optional.empty();
        }
        Standing standing = standings.of(sheet.id());
        return standing.isAuthority(sheet.editorId())
                ? standing.againstVersion()
                : Optional.of(Refusal.at(Signing.AUTHORITY, "signoff.refusal.not-your-version"));
    }
}
