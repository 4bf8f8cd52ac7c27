package org.scrubline.signoff;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Does something on many threads that start together. */
final class AtOnce {

    static final int THREADS = 50;

    private AtOnce() {}

    static <T> List<T> run(Callable<T> work) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(THREADS);
        try {
            CountDownLatch start = new CountDownLatch(1);
            List<Future<T>> running = new ArrayList<>();
            for (int i = 0; i < THREADS; i++) {
                running.add(threads.submit(() -> {
                    start.await();
                    return work.call();
                }));
            }
            start.countDown();
            List<T> answers = new ArrayList<>();
            for (Future<T> one : running) {
                answers.add(one.get());
            }
            return answers;
        } finally {
            threads.shutdownNow();
        }
    }
}
