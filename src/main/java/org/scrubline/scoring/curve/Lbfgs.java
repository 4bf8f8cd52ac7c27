package org.scrubline.scoring.curve;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Iterator;

/**
 * Limited-memory quasi-Newton minimiser with a strong Wolfe line search (Nocedal and Wright, Numerical Optimization,
 * 2nd ed., 2006, doi:10.1007/978-0-387-40065-5, algorithms 7.4, 3.5 and 3.6; from memory; Liu and Nocedal, Math Program
 * 1989;45:503, doi:10.1007/BF01589116). Deterministic. NaN and positive infinity count as a wall; negative infinity
 * must not occur.
 */
final class Lbfgs {

    /** Value of a function and, into the second array, its gradient. */
    interface Function {
        double valueAndGradient(double[] x, double[] gradient);
    }

    private static final int MEMORY = 30;
    private static final int MOST_ITERATIONS = 200;
    private static final int MOST_TRIALS = 25;
    private static final double DECREASE = 1e-4;
    private static final double CURVATURE = 0.9;
    private static final double RELATIVE = 1e-11;

    @SuppressWarnings("ArrayRecordComponent") // internal, never compared or exposed
    private record Pair(double[] step, double[] change, double rho) {}

    private final Function function;
    private final int n;
    private final double[] origin;
    private final double[] direction;
    private final double[] x;
    private final double[] gradient;
    private final double[] startGradient;
    private final Deque<Pair> pairs = new ArrayDeque<>();
    private double value;
    private double slope;

    private Lbfgs(Function function, double[] start) {
        this.function = function;
        n = start.length;
        x = start.clone();
        origin = start.clone();
        direction = new double[n];
        gradient = new double[n];
        startGradient = new double[n];
    }

    /**
     * Minimises from a start.
     *
     * @param tolerance stop when no entry of the gradient is larger
     * @return the best point found
     */
    static double[] minimise(Function function, double[] start, double tolerance) {
        Lbfgs search = new Lbfgs(function, start);
        search.run(tolerance);
        return search.x;
    }

    private void run(double tolerance) {
        value = evaluate();
        for (int iteration = 0; iteration < MOST_ITERATIONS && largest(gradient) > tolerance; iteration++) {
            System.arraycopy(x, 0, origin, 0, n);
            System.arraycopy(gradient, 0, startGradient, 0, n);
            double before = value;
            aim();
            double first = pairs.isEmpty() ? Math.min(1, 1 / Math.sqrt(norm(gradient))) : 1;
            if (!search(before, first)) {
                restore(before);
                if (pairs.isEmpty()) {
                    return;
                }
                pairs.clear();
                continue;
            }
            remember();
            if (before - value <= RELATIVE * Math.max(1, Math.abs(value))) {
                return;
            }
        }
    }

    private double evaluate() {
        double f = function.valueAndGradient(x, gradient);
        return Double.isNaN(f) ? Double.POSITIVE_INFINITY : f;
    }

    private void restore(double before) {
        System.arraycopy(origin, 0, x, 0, n);
        System.arraycopy(startGradient, 0, gradient, 0, n);
        value = before;
    }

    /** Two-loop recursion. */
    private void aim() {
        double[] q = gradient.clone();
        double[] alpha = new double[pairs.size()];
        int i = pairs.size();
        for (Iterator<Pair> last = pairs.descendingIterator(); last.hasNext(); ) {
            Pair p = last.next();
            alpha[--i] = p.rho * Dense.dot(p.step, 0, q, 0, n);
            Dense.subtract(q, 0, p.change, 0, 0, n, alpha[i]);
        }
        Pair newest = pairs.peekLast();
        double scale = newest == null ? 1 : 1 / (newest.rho * norm(newest.change));
        for (int k = 0; k < n; k++) {
            q[k] *= scale;
        }
        for (Pair p : pairs) {
            double beta = p.rho * Dense.dot(p.change, 0, q, 0, n);
            Dense.add(q, 0, p.step, 0, 0, n, alpha[i++] - beta);
        }
        Arrays.fill(direction, 0);
        Dense.subtract(direction, 0, q, 0, 0, n, 1);
        slope = Dense.dot(direction, 0, gradient, 0, n);
    }

    private double at(double share) {
        System.arraycopy(origin, 0, x, 0, n);
        Dense.add(x, 0, direction, 0, 0, n, share);
        value = evaluate();
        return Dense.dot(direction, 0, gradient, 0, n);
    }

    /** Finds a share of the direction that satisfies the strong Wolfe conditions, or at least lowers the value. */
    private boolean search(double before, double first) {
        double low = 0;
        double lowValue = before;
        double lowSlope = slope;
        double high = Double.POSITIVE_INFINITY;
        double share = first;
        for (int trial = 0; trial < MOST_TRIALS; trial++) {
            double here = at(share);
            if (!(value <= before + DECREASE * share * slope) || (low > 0 && value >= lowValue)) {
                high = share;
            } else if (Math.abs(here) <= -CURVATURE * slope) {
                return true;
            } else {
                if (here * (high - low) >= 0) {
                    high = low;
                }
                low = share;
                lowValue = value;
                lowSlope = here;
            }
            if (Math.abs(high - low) < 1e-12) {
                break;
            }
            share = next(low, lowValue, lowSlope, high, share);
        }
        if (low > 0) {
            at(low);
        }
        return low > 0 && value < before;
    }

    /** A point between the ends of the bracket by the slope at the better end, or farther out while there is none. */
    private double next(double low, double lowValue, double lowSlope, double high, double share) {
        if (Double.isInfinite(high)) {
            return 2 * share;
        }
        double width = high - low;
        if (share == high && !Double.isInfinite(value)) {
            double bend = value - lowValue - lowSlope * width;
            double ratio = -lowSlope * width / (2 * bend);
            return low + width * Math.min(0.9, Math.max(0.1, ratio));
        }
        return low + 0.5 * width;
    }

    private void remember() {
        double[] step = x.clone();
        double[] change = gradient.clone();
        Dense.subtract(step, 0, origin, 0, 0, n, 1);
        Dense.subtract(change, 0, startGradient, 0, 0, n, 1);
        double sy = Dense.dot(step, 0, change, 0, n);
        if (sy > 1e-12 * norm(change)) {
            pairs.addLast(new Pair(step, change, 1 / sy));
            if (pairs.size() > MEMORY) {
                pairs.removeFirst();
            }
        }
    }

    private double norm(double[] v) {
        return Dense.dot(v, 0, v, 0, n);
    }

    private static double largest(double[] v) {
        double most = 0;
        for (double e : v) {
            most = Math.max(most, Math.abs(e));
        }
        return most;
    }
}
