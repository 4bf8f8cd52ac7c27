package org.scrubline.signoff;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredSigningOutlook implements SigningOutlook {

    private final Reviews reviews;
    private final Settings settings;
    private final Lateness lateness;
    private final CountersignRule countersigning;
    private final Clock clock;

    StoredSigningOutlook(
            Reviews reviews, Settings settings, Lateness lateness, CountersignRule countersigning, Clock clock) {
        this.reviews = reviews;
        this.settings = settings;
        this.lateness = lateness;
        this.countersigning = countersigning;
        this.clock = clock;
    }

    @Override
    public Outlook of(SignedIn scorer, UUID sheetId) {
        Review review = reviews.of(scorer, sheetId);
        ProgrammeSettings now = settings.of(review.operation().programmeId());
        Instant endedAt = review.operation().endedAt();
        Instant moment = clock.instant();
        Duration age = endedAt == null ? Duration.ZERO : Duration.between(endedAt, moment);
        return new Outlook(
                age.compareTo(now.lateAfter()) > 0,
                now.lateAfter(),
                now.closedAfter().minus(age),
                lateness.release(sheetId),
                countersigning.reasons(review.content()));
    }
}
