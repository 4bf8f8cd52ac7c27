package org.scrubline.scoring.control;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.scrubline.scoring.Require;

/**
 * The exact run length of a chart on yes-or-no results: it starts at 0, climbs by {@code up} with a constant
 * probability, otherwise falls by {@code down}, is held at 0, and signals when it reaches {@code limit} (slack 1e-12).
 *
 * <p>Algorithm: each return to 0 renews the chart. Between two returns its height is {@code a * up - b * down} after a
 * climbs and b falls, so at step n only the few a with a height between 0 and the limit are alive and one pass over
 * them gives the exact probabilities that a cycle ends at step n by a return or by a signal. The average run length is
 * the mean length of a cycle divided by the probability that it ends in a signal; the probability of a signal by case n
 * is the renewal convolution of both. No lattice and no rounding of heights is involved; relative accuracy is about
 * 1e-13.
 *
 * <p>Cost: each step of a cycle passes over up to limit / (up + down) heights, and the average follows a cycle until
 * less than 1e-17 of its signals are still open, which for balanced weights takes a multiple of the square of that
 * number of steps; n probabilities take n² / 2 products.
 *
 * <p>The renewal argument is standard (for example Feller, An Introduction to Probability Theory, chapter XIII; from
 * memory).
 */
public final class RunLength {
    static final double SLACK = 1e-12;
    private static final double NEGLIGIBLE = 1e-17;
    private static final double MOST_HEIGHTS = 1e5;
    private static final int MOST_CASES = 10_000;

    private final double up;
    private final double down;
    private final double limit;
    private final double upProbability;

    private RunLength(double up, double down, double limit, double upProbability) {
        this.up = Require.positive("The upward weight", up);
        this.down = Require.positive("The downward weight", down);
        this.limit = Require.positive("The limit", limit);
        this.upProbability = Require.probability("The probability of a climb", upProbability);
        Require.that(
                limit / (up + down) < MOST_HEIGHTS,
                "The limit %s is too far from the weights %s and %s to be computed.",
                limit,
                up,
                down);
    }

    /**
     * A chart with the given weights.
     *
     * @param up amount of a climb, above 0
     * @param down amount of a fall, above 0
     * @param limit height of the signal, above 0, below 1e5 (up + down)
     * @param upProbability probability of a climb at each case, 0 to 1
     * @return its run length
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static RunLength of(double up, double down, double limit, double upProbability) {
        return new RunLength(up, down, limit, upProbability);
    }

    /**
     * {@return the mean number of cases to the signal, 1 or more; positive infinity when a signal is impossible, or its
     * probability in one cycle below the smallest double}
     */
    public double average() {
        Cycle cycle = new Cycle();
        double length = 0;
        double signals = 0;
        while (cycle.alive > 0 && (signals == 0 || cycle.alive > NEGLIGIBLE * signals)) {
            length += cycle.alive;
            cycle.advance();
            signals += cycle.signals;
        }
        return length / signals;
    }

    /**
     * Probabilities of a signal at or before each case.
     *
     * @param n number of cases, 0 to 10 000
     * @return n values from 0 to 1, never falling, the first for case 1; empty for n = 0
     * @throws IllegalArgumentException when {@code n} is out of its range
     */
    public List<Double> signalProbabilities(int n) {
        Require.that(n >= 0 && n <= MOST_CASES, "The number of cases must lie from 0 to %s, but is %s.", MOST_CASES, n);
        double[] returns = new double[n + 1];
        double[] firstAt = new double[n + 1];
        Cycle cycle = new Cycle();
        List<Double> cumulative = new ArrayList<>(n);
        double total = 0;
        for (int k = 1; k <= n; k++) {
            cycle.advance();
            returns[k] = cycle.returns;
            firstAt[k] = cycle.signals;
            for (int m = 1; m < k; m++) {
                firstAt[k] += returns[m] * firstAt[k - m];
            }
            total += firstAt[k];
            cumulative.add(Math.min(1, total));
        }
        return List.copyOf(cumulative);
    }

    /**
     * {@return the probability of a signal within the first {@code n} cases; 0 for n = 0}
     *
     * @param n number of cases, 0 to 10 000
     * @throws IllegalArgumentException when it is out of its range
     */
    public double signalProbability(int n) {
        List<Double> cumulative = signalProbabilities(n);
        return n == 0 ? 0 : cumulative.get(n - 1);
    }

    /**
     * The first case by which at least half of all series have signalled, looking no further than {@code n}.
     *
     * @param n number of cases, 0 to 10 000
     * @return a case, counted from 1; empty when fewer than half signal within n cases
     * @throws IllegalArgumentException when {@code n} is out of its range
     */
    public OptionalInt medianCase(int n) {
        List<Double> cumulative = signalProbabilities(n);
        for (int k = 0; k < n; k++) {
            if (cumulative.get(k) >= 0.5) {
                return OptionalInt.of(k + 1);
            }
        }
        return OptionalInt.empty();
    }

    /** The stretch from one visit at 0 to the next or to the signal, advanced one case at a time. */
    private final class Cycle {
        /** Probability of the heights alive, indexed by the number of climbs. */
        private double[] byClimbs = {1};

        /** Number of climbs that {@code byClimbs[0]} stands for. */
        private int fewest;

        private int step;
        private double alive = 1;
        private double returns;
        private double signals;

        private void advance() {
            double[] next = new double[byClimbs.length + 1];
            returns = 0;
            signals = 0;
            alive = 0;
            for (int i = 0; i < byClimbs.length; i++) {
                if (byClimbs[i] > 0) {
                    spread(next, i);
                }
            }
            step++;
            trim(next);
        }

        private void spread(double[] next, int i) {
            int climbs = fewest + i;
            int falls = step - climbs;
            double climbing = byClimbs[i] * upProbability;
            double falling = byClimbs[i] * (1 - upProbability);
            if ((climbs + 1) * up - falls * down >= limit - SLACK) {
                signals += climbing;
            } else {
                next[i + 1] += climbing;
                alive += climbing;
            }
            if (climbs * up - (falls + 1) * down <= SLACK) {
                returns += falling;
            } else {
                next[i] += falling;
                alive += falling;
            }
        }

        private void trim(double[] next) {
            int from = 0;
            int to = next.length;
            while (from < to && next[from] == 0) {
                from++;
            }
            while (to > from && next[to - 1] == 0) {
                to--;
            }
            byClimbs = java.util.Arrays.copyOfRange(next, from, to);
            fewest += from;
        }
    }
}
