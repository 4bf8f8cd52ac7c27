package org.scrubline.platform.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * So much of something in a time, and no more: a bucket that fills again evenly. Kept in the database, so that several
 * servers count together and a start forgets nothing.
 */
@Service
public class Allowances {

    private final AllowanceStore store;
    private final Clock clock;

    Allowances(AllowanceStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /**
     * Takes one, within the caller's transaction if there is one.
     *
     * @param subject who wants what, such as {@code files:} and an account's id; no name or address that can be read
     * @param most at least 1, as many at once or spread over the time
     * @return how long to wait when there is none left; empty when one was taken
     */
    @Transactional
    public Optional<Duration> take(String subject, int most, Duration within) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        Duration share = within.dividedBy(most);
        if (store.take(subject, now, share, within)) {
            return Optional.empty();
        }
        Instant free = store.wholeAt(subject).orElse(now).plus(share).minus(within);
        return Optional.of(Duration.between(now, free.isAfter(now) ? free : now.plus(share)));
    }

    /** Drops what is whole again. */
    @Transactional
    public void forgetOld() {
        store.forget(clock.instant());
    }
}
