package org.scrubline.platform;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.function.Supplier;

/**
 * The only clock. Shows real time in UTC, except inside {@link #at}, where the calling thread lives at the given
 * instant: the demo programme and the tests write their history that way.
 */
public final class ScrublineClock extends Clock {

    private final Clock real;
    private final ZoneId zone;
    private final ThreadLocal<Instant> moved;

    public ScrublineClock(Clock real) {
        this(real, ZoneOffset.UTC, new ThreadLocal<>());
    }

    private ScrublineClock(Clock real, ZoneId zone, ThreadLocal<Instant> moved) {
        this.real = real;
        this.zone = zone;
        this.moved = moved;
    }

    /** Runs {@code work} with this thread's clock standing at {@code instant}. */
    public <T> T at(Instant instant, Supplier<T> work) {
        Instant before = moved.get();
        moved.set(instant);
        try {
            return work.get();
        } finally {
            if (before == null) {
                moved.remove();
            } else {
                moved.set(before);
            }
        }
    }

    @Override
    public Instant instant() {
        Instant set = moved.get();
        return set == null ? real.instant() : set;
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
        return new ScrublineClock(real, other, moved);
    }
}
