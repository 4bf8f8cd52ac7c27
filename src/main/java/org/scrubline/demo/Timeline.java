package org.scrubline.demo;

import java.time.Instant;
import java.util.Comparator;
import java.util.PriorityQueue;
import org.scrubline.platform.ScrublineClock;

/** What is still to happen, done in the order of time with the clock standing at each instant. */
final class Timeline {

    private record Deed(Instant at, long asked, Runnable work) {}

    private final ScrublineClock clock;
    private final PriorityQueue<Deed> open =
            new PriorityQueue<>(Comparator.comparing(Deed::at).thenComparing(Deed::asked));
    private long asked;

    Timeline(ScrublineClock clock) {
        this.clock = clock;
    }

    /** Lets something happen; a deed may add later ones. At one instant the first added comes first. */
    void at(Instant instant, Runnable work) {
        open.add(new Deed(instant, asked++, work));
    }

    /** Lives through everything. */
    void run() {
        for (Deed deed = open.poll(); deed != null; deed = open.poll()) {
            Runnable work = deed.work();
            clock.at(deed.at(), () -> {
                work.run();
                return true;
            });
        }
    }
}
