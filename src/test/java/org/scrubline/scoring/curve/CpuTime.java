package org.scrubline.scoring.curve;

import java.lang.management.ManagementFactory;
import java.util.Arrays;

/** CPU time of the calling thread, so that other work on the machine does not count. */
final class CpuTime {

    private CpuTime() {}

    static long nanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    /** Median milliseconds of some rounds, after others to warm up. */
    static double median(int warm, int rounds, Runnable work) {
        double[] times = new double[rounds];
        for (int i = -warm; i < rounds; i++) {
            long start = nanos();
            work.run();
            if (i >= 0) {
                times[i] = (nanos() - start) / 1e6;
            }
        }
        Arrays.sort(times);
        return times[rounds / 2];
    }
}
