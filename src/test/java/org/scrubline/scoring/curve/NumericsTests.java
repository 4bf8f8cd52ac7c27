package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class NumericsTests {

    private static double[] positive(int n, Random random) {
        double[] root = random.doubles(n * n, -1, 1).toArray();
        double[] a = new double[n * n];
        for (int i = 0; i < n; i++) {
            a[i * n + i] = 0.1;
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    a[i * n + j] += root[k * n + i] * root[k * n + j];
                }
            }
        }
        return a;
    }

    @Test
    void aMatrixTimesItsInverseIsOne() {
        Random random = new Random(1);
        for (int n = 1; n < 12; n++) {
            double[] a = positive(n, random);
            double[] factor = a.clone();
            Dense.cholesky(factor, n);
            double[] inverse = Dense.inverse(factor, n, 0);
            double[] column = new double[n];
            for (int j = 0; j < n; j++) {
                double[] e = new double[n];
                System.arraycopy(inverse, j * n, e, 0, n);
                Dense.multiply(a, n, e, column);
                for (int i = 0; i < n; i++) {
                    assertThat(column[i]).isCloseTo(i == j ? 1 : 0, within(1e-9));
                }
            }
        }
    }

    @Test
    void solvingAgreesWithTheInverseAndItsLastBlock() {
        Random random = new Random(2);
        int n = 9;
        double[] factor = positive(n, random);
        Dense.cholesky(factor, n);
        double[] whole = Dense.inverse(factor, n, 0);
        double[] block = Dense.inverse(factor, n, 6);
        double[] b = random.doubles(n).toArray();
        double[] expected = new double[n];
        Dense.multiply(whole, n, b, expected);
        Dense.solve(factor, n, b);
        assertThat(b).containsExactly(expected, within(1e-9));
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertThat(block[i * 3 + j]).isCloseTo(whole[(6 + i) * n + 6 + j], within(1e-9));
            }
        }
    }

    @Test
    void theLogDeterminantOfADiagonalIsTheSumOfLogs() {
        assertThat(Dense.cholesky(new double[] {2, 0, 0, 8}, 2)).isCloseTo(Math.log(16), within(1e-12));
    }

    /** H. H. Rosenbrock's curved valley, minimum 0 at (1, 1); 1960, from memory. */
    @Test
    void theSearchFindsTheEndOfACurvedValley() {
        double[] best = Lbfgs.minimise(
                (x, g) -> {
                    double a = 1 - x[0];
                    double b = x[1] - x[0] * x[0];
                    g[0] = -2 * a - 400 * x[0] * b;
                    g[1] = 200 * b;
                    return a * a + 100 * b * b;
                },
                new double[] {-1.2, 1},
                1e-8);
        assertThat(best).containsExactly(new double[] {1, 1}, within(1e-6));
    }

    @Test
    void theSearchStaysOutOfWalls() {
        double[] best = Lbfgs.minimise(
                (x, g) -> {
                    g[0] = 1 - 0.01 / x[0];
                    return x[0] <= 0 ? Double.NaN : x[0] - 0.01 * Math.log(x[0]);
                },
                new double[] {5},
                1e-7);
        assertThat(best[0]).isCloseTo(0.01, within(1e-5));
    }

    @Test
    void wholeCaseChancesEqualFineIntegration() {
        Random random = new Random(3);
        for (int round = 0; round < 20; round++) {
            double variance = 0.05 + random.nextDouble();
            double[] own = random.doubles(5, -1, 1).toArray();
            double[] draw = {0, 0, own[0], own[1], own[2], own[3], own[4]};
            double common = 4 * random.nextDouble() - 1;
            WholeCase rule = new WholeCase(5, variance);
            rule.steps(draw, 0, new double[5]);
            double sum = 0;
            double total = 0;
            for (int q = 0; q <= 400; q++) {
                double z = -8 + 16 * q / 400.0;
                double product = Math.exp(-z * z / 2);
                total += product;
                for (double d : own) {
                    product /= 1 + Math.exp(-(common + d + z * Math.sqrt(variance)));
                }
                sum += product;
            }
            assertThat(rule.chance(common)).isCloseTo(sum / total, within(2e-4));
            assertThat(rule.wholeChance(common)).isCloseTo(rule.chance(common), within(1e-12));
        }
    }
}
