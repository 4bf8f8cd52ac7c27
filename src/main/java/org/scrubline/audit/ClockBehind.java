package org.scrubline.audit;

import java.time.Instant;
import org.scrubline.platform.Audited;

/** The clock of the server shows an earlier time than something the database holds already. */
record ClockBehind(Instant clock, Instant newest) implements Audited {

    @Override
    public String action() {
        return "clock-behind";
    }

    @Override
    public Item item() {
        return new Item("clock", null, null, "");
    }

    @Override
    public String before() {
        return newest.toString();
    }

    @Override
    public String after() {
        return clock.toString();
    }
}
