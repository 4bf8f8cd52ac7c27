package org.scrubline.casework;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.retention.Retention;
import org.scrubline.retention.RetentionTerms;
import org.springframework.stereotype.Component;

/** When an open sheet without a change goes: after the days its programme says, and never without notice. */
@Component
class RemovalDates {

    static final Duration NOTICE = Duration.ofDays(RetentionTerms.TOLD_BEFORE_DAYS);

    private final Retention retention;

    RemovalDates(Retention retention) {
        this.retention = retention;
    }

    /** The day of removal as the scorer was told; empty while nobody was told or the trainee is under a hold. */
    Optional<Instant> announced(UUID programme, UUID trainee, Instant touched, @Nullable Instant told) {
        return told == null || retention.held(trainee)
                ? Optional.empty()
                : Optional.of(of(touched, told, retention.terms(programme)));
    }

    /** The later of: old enough, and told long enough ago. */
    static Instant of(Instant touched, Instant told, RetentionTerms terms) {
        Instant old = touched.plus(Duration.ofDays(terms.draftDays()));
        Instant noticed = told.plus(NOTICE);
        return old.isAfter(noticed) ? old : noticed;
    }
}
