package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * Small dense symmetric matrices, row by row in one array, upper triangle. Loops run along rows in outer-product form,
 * which the compiler turns into vector instructions; sums keep one fixed order, so results are the same bits always.
 */
final class Dense {

    private static final double TINY = 1e-280;

    private Dense() {}

    /**
     * Cholesky factor in place: A = U'U with U in the upper triangle. A pivot lost to rounding is replaced by a tiny
     * share of its own size, so the result is always finite.
     *
     * @return log of the determinant of A
     */
    static double cholesky(double[] a, int n) {
        double logdet = 0;
        for (int k = 0; k < n; k++) {
            int row = k * n;
            double pivot = Math.max(a[row + k], TINY);
            logdet += Math.log(pivot);
            double root = Math.sqrt(pivot);
            double inverse = 1 / root;
            a[row + k] = root;
            for (int j = k + 1; j < n; j++) {
                a[row + j] *= inverse;
            }
            for (int i = k + 1; i < n; i++) {
                subtract(a, i * n, a, row, i, n, a[row + i]);
            }
        }
        return logdet;
    }

    /** {@code a[ao+j] -= c b[bo+j]} for j in from..to-1. */
    static void subtract(double[] a, int ao, double[] b, int bo, int from, int to, double c) {
        for (int j = from; j < to; j++) {
            a[ao + j] -= c * b[bo + j];
        }
    }

    /** {@code a[ao+j] += c b[bo+j]} for j in from..to-1. */
    static void add(double[] a, int ao, double[] b, int bo, int from, int to, double c) {
        for (int j = from; j < to; j++) {
            a[ao + j] += c * b[bo + j];
        }
    }

    static double dot(double[] a, int ao, double[] b, int bo, int n) {
        double s0 = 0;
        double s1 = 0;
        int j = 0;
        for (; j + 1 < n; j += 2) {
            s0 += a[ao + j] * b[bo + j];
            s1 += a[ao + j + 1] * b[bo + j + 1];
        }
        return j < n ? s0 + s1 + a[ao + j] * b[bo + j] : s0 + s1;
    }

    /** Solves U'U x = b in place. */
    static void solve(double[] u, int n, double[] x) {
        for (int k = 0; k < n; k++) {
            double y = x[k] / u[k * n + k];
            x[k] = y;
            subtract(x, 0, u, k * n, k + 1, n, y);
        }
        for (int i = n - 1; i >= 0; i--) {
            int row = i * n;
            x[i] = (x[i] - dot(u, row + i + 1, x, i + 1, n - i - 1)) / u[row + i];
        }
    }

    /** Full symmetric inverse of U'U restricted to rows and columns from..n-1, as a (n-from)² matrix. */
    static double[] inverse(double[] u, int n, int from) {
        int size = n - from;
        double[] w = new double[size * size];
        for (int k = 0; k < size; k++) {
            int row = k * size;
            w[row + k] = 1;
            for (int i = 0; i < k; i++) {
                subtract(w, row, w, i * size, 0, i + 1, u[(from + i) * n + from + k]);
            }
            double inverse = 1 / u[(from + k) * n + from + k];
            for (int j = 0; j <= k; j++) {
                w[row + j] *= inverse;
            }
        }
        double[] a = new double[size * size];
        for (int k = 0; k < size; k++) {
            for (int i = 0; i <= k; i++) {
                add(a, i * size, w, k * size, i, k + 1, w[k * size + i]);
            }
        }
        mirror(a, size);
        return a;
    }

    /** Copies the upper triangle to the lower. */
    static void mirror(double[] a, int n) {
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                a[i * n + j] = a[j * n + i];
            }
        }
    }

    /** y = A x for a full n × n matrix. */
    static void multiply(double[] a, int n, double[] x, double[] y) {
        Arrays.fill(y, 0, n, 0);
        for (int i = 0; i < n; i++) {
            if (x[i] != 0) {
                add(y, 0, a, i * n, 0, n, x[i]);
            }
        }
    }

    /** x'A y for a full n × n matrix. */
    static double form(double[] x, double[] a, double[] y, int n) {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += x[i] * dot(a, i * n, y, 0, n);
        }
        return sum;
    }
}
