package org.scrubline.scoring;

import java.util.Arrays;
import java.util.function.ToDoubleFunction;

/**
 * Minimises a smooth function of a few variables: BFGS with a backtracking line search that trusts the slope once
 * values differ by rounding alone, and derivatives by central differences for functions that have none.
 *
 * <p>The inverse of the second derivatives is kept whole, n x n, so the method is meant for tens of variables. It finds
 * the local minimum downhill of the start.
 *
 * <p>Nocedal and Wright, Numerical Optimization, 2nd ed., 2006, chapters 6 and 8, doi:10.1007/978-0-387-40065-5; Hager
 * and Zhang, SIAM J Optim 2005;16:170, doi:10.1137/030601880 (approximate Wolfe conditions).
 */
public final class QuasiNewton {
    private static final int MOST_STEPS = 500;
    private static final int MOST_ROUNDS = 5;
    private static final double FIRST_STEP = 0.7;
    private static final double SUFFICIENT = 1e-4;
    private static final double FLATTER = 0.9;
    private static final double ROUNDING = 1e-12;
    private static final double SHORTEST = 1e-14;
    private static final double NEAR_ZERO = 0.05;
    private static final double[] AWAY = {0.01, 0.03, 0.1, 0.3, 1};

    private QuasiNewton() {}

    /**
     * A function with its gradient. NaN or positive infinity marks a point outside the domain, which no step enters;
     * negative infinity must not occur, since it would count as lower.
     */
    public interface Objective {
        /**
         * {@return the value at {@code x}}
         *
         * @param x the point; not to be changed
         * @param gradient filled with the derivatives, as long as {@code x}
         */
        double value(double[] x, double[] gradient);
    }

    /**
     * The minimum.
     *
     * @param point where it lies, one number a variable
     * @param value of the function there
     */
    public record Minimum(java.util.List<Double> point, double value) {
        /** {@return the point as an array of its own} */
        public double[] toArray() {
            return point.stream().mapToDouble(Double::doubleValue).toArray();
        }
    }

    /**
     * A function without gradient, differentiated by five-point central differences, {@code (8 (f(x + h) - f(x - h)) -
     * (f(x + 2h) - f(x - 2h))) / 12h}: error of the order h⁴, and rounding of the order of that of f over h. Each
     * gradient takes four values a variable.
     *
     * @param function to be differentiated; must exist 2h around every point of the search
     * @param step h, above 0, the same for every variable
     * @return the function with its gradient
     */
    public static Objective differentiated(ToDoubleFunction<double[]> function, double step) {
        return (x, gradient) -> {
            for (int i = 0; i < x.length; i++) {
                gradient[i] = (at(function, x, i, step) - at(function, x, i, -step)) * 8 / (12 * step)
                        - (at(function, x, i, 2 * step) - at(function, x, i, -2 * step)) / (12 * step);
            }
            return function.applyAsDouble(x);
        };
    }

    private static double at(ToDoubleFunction<double[]> function, double[] x, int i, double step) {
        double[] moved = x.clone();
        moved[i] += step;
        return function.applyAsDouble(moved);
    }

    /**
     * Second derivatives at a point, by the same five-point differences of the gradient, made symmetric by the mean of
     * both orders.
     *
     * @param objective with its gradient
     * @param x the point; not changed
     * @param step h, above 0
     * @return n x n, by rows
     */
    public static double[][] hessian(Objective objective, double[] x, double step) {
        int n = x.length;
        double[][] hessian = new double[n][n];
        for (int i = 0; i < n; i++) {
            double[] far = gradientDifference(objective, x, i, 2 * step);
            double[] near = gradientDifference(objective, x, i, step);
            for (int j = 0; j < n; j++) {
                double derivative = (8 * near[j] - far[j]) / (12 * step);
                hessian[i][j] += derivative / 2;
                hessian[j][i] += derivative / 2;
            }
        }
        return hessian;
    }

    private static double[] gradientDifference(Objective objective, double[] x, int i, double step) {
        double[] up = new double[x.length];
        double[] down = new double[x.length];
        double[] moved = x.clone();
        moved[i] = x[i] + step;
        objective.value(moved, up);
        moved[i] = x[i] - step;
        objective.value(moved, down);
        for (int j = 0; j < up.length; j++) {
            up[j] -= down[j];
        }
        return up;
    }

    /**
     * The minimum reached from {@code start}, in at most 500 steps.
     *
     * <p>When no step along the search direction improves, not even straight downhill, values are at their rounding:
     * the point then counts as the minimum if no component of the gradient is above 1000 times the tolerance. Without
     * variables the start is the minimum.
     *
     * @param objective the function
     * @param start where to begin; not changed
     * @param tolerance largest gradient component, relative to 1 + |value at the start| / 1000, at which the search
     *     ends
     * @return the last point
     * @throws IllegalArgumentException when the value at the start is not finite, or the search does not come to rest
     */
    public static Minimum minimise(Objective objective, double[] start, double tolerance) {
        State state = new State(objective, start);
        Require.that(
                Double.isFinite(state.value),
                "The fit cannot start: the likelihood does not exist at the start values.");
        double limit = tolerance * (1 + Math.abs(state.value) / 1000);
        for (int step = 0; step < MOST_STEPS; step++) {
            if (largest(state.gradient) <= limit) {
                return state.minimum();
            }
            if (!state.advance()) {
                if (state.fresh) {
                    Require.that(largest(state.gradient) <= 1e3 * limit, "The fit does not converge.");
                    return state.minimum();
                }
                state.restart();
            }
        }
        throw new IllegalArgumentException("The fit does not converge in " + MOST_STEPS + " steps.");
    }

    /**
     * The minimum of a function that knows some variables, standard deviations, by their squares only. At 0 such a
     * function is flat whether 0 is best or worst, so a search that ends within .05 of 0 is checked at .01, .03, .1, .3
     * and 1, one variable at a time, and sent off again from the lowest of these, at most five times. A deviation may
     * come back negative; only its square counts.
     *
     * @param objective the function
     * @param start where to begin; not changed
     * @param tolerance as for the plain search
     * @param deviations indices of these variables
     * @return the last point
     * @throws IllegalArgumentException when the value at the start is not finite, or a search does not come to rest
     */
    public static Minimum minimise(Objective objective, double[] start, double tolerance, int... deviations) {
        Minimum minimum = minimise(objective, start, tolerance);
        double[] ignored = new double[start.length];
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double[] best = minimum.toArray();
            double least = minimum.value() - 1e-10 * (1 + Math.abs(minimum.value()));
            for (int deviation : deviations) {
                for (double away : Math.abs(minimum.point().get(deviation)) < NEAR_ZERO ? AWAY : new double[0]) {
                    double[] trial = minimum.toArray();
                    trial[deviation] = away;
                    double value = objective.value(trial, ignored);
                    if (value < least) {
                        least = value;
                        best = trial;
                    }
                }
            }
            if (Arrays.equals(best, minimum.toArray())) {
                return minimum;
            }
            minimum = minimise(objective, best, tolerance);
        }
        return minimum;
    }

    /** Where the search stands. */
    private static final class State {
        private final Objective objective;
        private double[] x;
        private double[] gradient;
        private double value;
        private double[][] inverse;
        private boolean fresh = true;

        private State(Objective objective, double[] start) {
            this.objective = objective;
            x = start.clone();
            gradient = new double[x.length];
            value = objective.value(x, gradient);
            inverse = identity(x.length, FIRST_STEP / Math.max(1, norm(gradient)));
        }

        private Minimum minimum() {
            return new Minimum(Arrays.stream(x).boxed().toList(), value);
        }

        private void restart() {
            inverse = identity(x.length, FIRST_STEP / Math.max(1, norm(gradient)));
            fresh = true;
        }

        /** One step along the search direction; false when no length of it is an improvement. */
        private boolean advance() {
            double[] direction = times(inverse, gradient, -1);
            double slope = dot(direction, gradient);
            if (!(slope < 0)) {
                return false;
            }
            double[] nextGradient = new double[x.length];
            for (double length = 1; length > SHORTEST; length /= 2) {
                double[] next = moved(x, direction, length);
                double nextValue = objective.value(next, nextGradient);
                boolean lower = nextValue <= value + SUFFICIENT * length * slope;
                // Where the values differ by rounding alone, the slope still tells.
                boolean flatter = nextValue <= value + ROUNDING * Math.abs(value)
                        && Math.abs(dot(direction, nextGradient)) <= FLATTER * Math.abs(slope);
                if (lower || flatter) {
                    update(inverse, minus(next, x), minus(nextGradient, gradient), fresh);
                    fresh = false;
                    x = next;
                    gradient = nextGradient;
                    value = nextValue;
                    return true;
                }
            }
            return false;
        }
    }

    private static void update(double[][] inverse, double[] step, double[] change, boolean fresh) {
        double along = dot(step, change);
        if (along <= 1e-14 * norm(step) * norm(change)) {
            return;
        }
        int n = step.length;
        if (fresh) {
            double scale = along / dot(change, change);
            for (int i = 0; i < n; i++) {
                inverse[i][i] = scale;
            }
        }
        double[] image = times(inverse, change, 1);
        double curvature = 1 + dot(change, image) / along;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] += (curvature * step[i] * step[j] - image[i] * step[j] - step[i] * image[j]) / along;
            }
        }
    }

    private static double[][] identity(int n, double scale) {
        double[][] matrix = new double[n][n];
        for (int i = 0; i < n; i++) {
            matrix[i][i] = scale;
        }
        return matrix;
    }

    private static double[] times(double[][] matrix, double[] vector, double factor) {
        double[] product = new double[vector.length];
        for (int i = 0; i < product.length; i++) {
            product[i] = factor * dot(matrix[i], vector);
        }
        return product;
    }

    private static double[] moved(double[] x, double[] direction, double length) {
        double[] next = x.clone();
        for (int i = 0; i < x.length; i++) {
            next[i] += length * direction[i];
        }
        return next;
    }

    private static double[] minus(double[] a, double[] b) {
        return moved(a, b, -1);
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double norm(double[] a) {
        return Math.sqrt(dot(a, a));
    }

    private static double largest(double[] a) {
        return Arrays.stream(a).map(Math::abs).max().orElse(0);
    }
}
