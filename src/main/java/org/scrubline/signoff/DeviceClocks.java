package org.scrubline.signoff;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.people.Settings;
import org.scrubline.signoff.SignedContent.DeviceTime;
import org.springframework.stereotype.Component;

/**
 * Judges how far the clock of a device can be relied on. It cannot when it is further from the server's than the programme
 * allows, or names an instant before the sheet was there: then the signature counts from its receipt.
 */
@Component
class DeviceClocks {

    private final Settings settings;
    private final Lateness lateness;
    private final Clock clock;

    DeviceClocks(Settings settings, Lateness lateness, Clock clock) {
        this.settings = settings;
        this.lateness = lateness;
        this.clock = clock;
    }

    SigningTime of(SurgicalCase operation, Sheet sheet, TableSignature signature) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
        Duration skew = settings.of(operation.programmeId()).clockSkew();
        boolean far = Duration.between(signature.sentAt(), now).abs().compareTo(skew) > 0
                || signature.at().isAfter(now.plus(skew))
                || signature.at().isBefore(sheet.openedAt().minus(skew));
        Instant at = far || signature.at().isAfter(now) ? now : signature.at();
        boolean receivedLate =
                operation.endedAt() != null && lateness.late(operation, now) && !lateness.late(operation, at);
        return new SigningTime(at, now, new DeviceTime(signature.at(), signature.zone(), far, receivedLate));
    }
}
