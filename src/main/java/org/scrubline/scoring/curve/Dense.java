package org.scrubline.scoring.curve;

import java.util.Arrays;

/**
 * Small dense symmetric matrices, row by row in one array, upper triangle. Where most time goes the rows are arrays of
 * their own: only then does the compiler make vector instructions of a loop along them. Sums keep one fixed order, so
 * results are the same bits always.
 */
final class Dense {

    private static final double TINY = 1e-280;

    private Dense() {}

    /**
     * Cholesky factor in place: A = U'U with U in the upper triangle. A pivot that rounding has brought to 0 or below
     * is replaced by 1e-280, so no root is taken of a negative number.
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
        double[] a = new double[size * size];
        double[][] rows = inverseRows(u, n, from);
        for (int i = 0; i < size; i++) {
            System.arraycopy(rows[i], 0, a, i * size, size);
        }
        return a;
    }

    /** The same as an array of rows. */
    static double[][] inverseRows(double[] u, int n, int from) {
        int size = n - from;
        double[][] w = inverseFactor(u, n, from);
        double[][] a = new double[size][size];
        double[] c = new double[size];
        for (int i = 0; i < size; i++) {
            for (int k = i; k < size; k++) {
                c[k] = w[k][i];
            }
            addRows(a[i], w, i, size, c);
        }
        return a;
    }

    /** Inverse of U' restricted to rows and columns from..n-1: a lower triangle, zero above. */
    private static double[][] inverseFactor(double[] u, int n, int from) {
        int size = n - from;
        double[][] w = new double[size][size];
        double[] c = new double[size];
        for (int k = 0; k < size; k++) {
            int column = from + k;
            for (int i = 0; i < k; i++) {
                c[i] = -u[(from + i) * n + column];
            }
            w[k][k] = 1;
            addRows(w[k], w, 0, k, c);
            double inverse = 1 / u[column * n + column];
            for (int j = 0; j <= k; j++) {
                w[k][j] *= inverse;
            }
        }
        return w;
    }

    /** {@code y += Σ x_i rows_i} over i in first..end-1; rows are as long as y. */
    static void addRows(double[] y, double[][] rows, int first, int end, double[] x) {
        int i = first;
        for (; i + 3 < end; i += 4) {
            double c0 = x[i];
            double c1 = x[i + 1];
            double c2 = x[i + 2];
            double c3 = x[i + 3];
            double[] r0 = rows[i];
            double[] r1 = rows[i + 1];
            double[] r2 = rows[i + 2];
            double[] r3 = rows[i + 3];
            for (int j = 0; j < y.length; j++) {
                y[j] = y[j] + c0 * r0[j] + c1 * r1[j] + c2 * r2[j] + c3 * r3[j];
            }
        }
        for (; i < end; i++) {
            add(y, 0, rows[i], 0, 0, y.length, x[i]);
        }
    }

    /** {@code y = Σ x_i rows_i} over the first x.length rows. */
    static void multiply(double[][] rows, double[] x, double[] y) {
        Arrays.fill(y, 0);
        addRows(y, rows, 0, x.length, x);
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
