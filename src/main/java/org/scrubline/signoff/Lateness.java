package org.scrubline.signoff;

import static java.util.Objects.requireNonNull;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.Settings;
import org.springframework.stereotype.Component;

/** How a signature stands to the end of its case, by the settings of the moment it is made. */
@Component
class Lateness {

    private final Settings settings;
    private final LateReleaseStore releases;

    Lateness(Settings settings, LateReleaseStore releases) {
        this.settings = settings;
        this.releases = releases;
    }

    boolean late(SurgicalCase operation, Instant signedAt) {
        Duration age = Duration.between(requireNonNull(operation.endedAt()), signedAt);
        return age.compareTo(settings.of(operation.programmeId()).lateAfter()) > 0;
    }

    SignedContent.@Nullable Release release(UUID sheet) {
        return releases.of(sheet)
                .map(release -> new SignedContent.Release(
                        release.id(),
                        release.releasedName(),
                        release.releasedRole(),
                        release.releasedAt(),
                        release.releasedZone(),
                        release.reason()))
                .orElse(null);
    }
}
