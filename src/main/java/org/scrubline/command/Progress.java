package org.scrubline.command;

import java.io.PrintStream;
import java.util.function.LongConsumer;

/** Says now and then how far a long command is. */
final class Progress implements LongConsumer {

    private static final long STEP = 20_000;

    private final PrintStream err;
    private long next = STEP;

    Progress(PrintStream err) {
        this.err = err;
    }

    @Override
    public void accept(long done) {
        if (done >= next) {
            err.println(done + " leaves so far");
            next = (done / STEP + 1) * STEP;
        }
    }
}
