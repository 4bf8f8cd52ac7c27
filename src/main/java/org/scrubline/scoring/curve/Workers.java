package org.scrubline.scoring.curve;

import java.util.function.IntConsumer;
import java.util.stream.IntStream;

/** Runs independent pieces of work one after the other or side by side; each piece writes only its own arrays. */
enum Workers {
    ONE {
        @Override
        void each(int count, IntConsumer work) {
            for (int i = 0; i < count; i++) {
                work.accept(i);
            }
        }
    },
    ALL {
        @Override
        void each(int count, IntConsumer work) {
            IntStream.range(0, count).parallel().forEach(work);
        }
    };

    abstract void each(int count, IntConsumer work);
}
