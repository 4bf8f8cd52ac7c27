package org.scrubline.scoring.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
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

    /** Each step's chance and a single step's, against fine sums over the shared effect. */
    @Test
    void chancesOfSingleStepsEqualFineIntegration() {
        WholeCase rule = new WholeCase(2, 0.4);
        double[] draw = {9, 9, 9, 0.3, -0.5};
        rule.steps(draw, 1, new double[] {0.2, 0.1});
        rule.chance(0.7);
        assertThat(rule.stepChance(0)).isCloseTo(fine(0.7 + 0.3 - 0.2, 0.4), within(1e-5));
        assertThat(rule.stepChance(1)).isCloseTo(fine(0.7 - 0.5 - 0.1, 0.4), within(1e-5));
        assertThat(rule.one(0.8)).isCloseTo(fine(0.8, 0.4), within(1e-5));
    }

    private static double fine(double above, double variance) {
        double sum = 0;
        double total = 0;
        for (int q = 0; q <= 400; q++) {
            double z = -8 + q / 25.0;
            double weight = Math.exp(-z * z / 2);
            sum += weight / (1 + Math.exp(-above - z * Math.sqrt(variance)));
            total += weight;
        }
        return sum / total;
    }

    @Test
    void chancesFarOutStayChances() {
        WholeCase rule = new WholeCase(3, 1);
        for (double far : new double[] {50, 1000, 1e300}) {
            rule.steps(new double[] {0, 0, far, far, far}, 0, new double[3]);
            assertThat(rule.chance(far)).isCloseTo(1, within(1e-12));
            assertThat(rule.wholeChance(far)).isCloseTo(1, within(1e-12));
            assertThat(rule.one(far)).isCloseTo(1, within(1e-12));
            rule.steps(new double[] {0, 0, -far, -far, -far}, 0, new double[3]);
            assertThat(rule.chance(-far)).isBetween(0.0, 1e-60);
            assertThat(rule.wholeChance(-far)).isBetween(0.0, 1e-60);
            assertThat(rule.one(-far)).isBetween(0.0, 1e-15);
        }
    }

    /** In every dimension the points are the middles of 256 equal shares of the normal law. */
    @Test
    void thePointsAreEvenInEveryDimension() {
        double[] z = WholeCase.normals(256, 40);
        for (int k = 0; k < 40; k++) {
            int dimension = k;
            double[] sorted = IntStream.range(0, 256)
                    .mapToDouble(i -> z[i * 40 + dimension])
                    .sorted()
                    .toArray();
            assertThat(sorted[0]).isCloseTo(-2.8856349, within(1e-6));
            assertThat(sorted[127]).isCloseTo(-sorted[128], within(1e-12));
            assertThat(sorted[192]).isCloseTo(0.6806488, within(1e-6));
            assertThat(Arrays.stream(sorted).sum()).isCloseTo(0, within(1e-9));
        }
    }

    /** Means exactly, covariances to what 256 points allow; for few unknowns and for more than usual. */
    @Test
    void drawsHaveTheMeanAndCovarianceOfTheirLaw() {
        for (int n : new int[] {3, 40}) {
            double[] a = positive(n, new Random(n));
            double[] mean = new Random(7).doubles(n, -2, 2).toArray();
            double[] x = WholeCase.draw(new NextCase(mean, a, 0), 1.5, 256);
            for (int r = 0; r < n; r++) {
                double sum = 0;
                double square = 0;
                for (int i = 0; i < 256; i++) {
                    sum += x[i * n + r] / 256;
                    square += Math.pow(x[i * n + r] - mean[r], 2) / 256;
                }
                assertThat(sum).isCloseTo(mean[r], within(1e-9));
                assertThat(square / (1.5 * a[r * n + r])).isCloseTo(1, within(n == 3 ? 0.1 : 0.5));
            }
        }
    }
}
