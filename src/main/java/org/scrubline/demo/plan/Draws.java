package org.scrubline.demo.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** Chance, from a seed. Each purpose has a stream of its own, so that drawing more for one changes no other. */
final class Draws {

    private final Random random;

    private Draws(long seed) {
        this.random = new Random(seed);
    }

    /** The stream of one purpose: the same seed and keys give the same numbers. */
    static Draws of(long seed, long... keys) {
        long mixed = mix(seed);
        for (long key : keys) {
            mixed = mix(mixed ^ key);
        }
        return new Draws(mixed);
    }

    /** Spreads every bit of the input over all bits, since neighbouring seeds start alike. */
    private static long mix(long value) {
        long z = value + 0x9E3779B97F4A7C15L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    double uniform() {
        return random.nextDouble();
    }

    double normal(double sd) {
        return random.nextGaussian() * sd;
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** 0 to {@code bound} − 1. */
    int below(int bound) {
        return random.nextInt(bound);
    }

    <T> T pick(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    <T> List<T> shuffled(List<T> of) {
        List<T> shuffled = new ArrayList<>(of);
        Collections.shuffle(shuffled, random);
        return shuffled;
    }

    /** Index drawn by weight. */
    int weighted(double... weights) {
        double left = 0;
        for (double weight : weights) {
            left += weight;
        }
        left *= random.nextDouble();
        for (int i = 0; i < weights.length - 1; i++) {
            left -= weights[i];
            if (left < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }
}
