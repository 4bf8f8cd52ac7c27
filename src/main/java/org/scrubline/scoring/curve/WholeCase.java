package org.scrubline.scoring.curve;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.random.SobolSequenceGenerator;

/**
 * Chance that every critical step of the next case reaches the standard. Given the state, steps share one
 * whole-assessment effect, integrated by Gauss–Hermite; the state itself is drawn at fixed Sobol points carried to the
 * normal law, so the same state always gives the same bits.
 */
final class WholeCase {

    /** Draws of the state. */
    static final int DRAWS = 256;

    private static final int NODES = 9;
    private static final double[] NODE = new double[NODES];
    private static final double[] WEIGHT = new double[NODES];
    private static final int USUAL_DIMENSIONS = 32;
    private static final double LARGEST = 1e30;

    static {
        GaussIntegrator rule = new GaussIntegratorFactory().hermite(NODES);
        for (int q = 0; q < NODES; q++) {
            NODE[q] = Math.sqrt(2) * rule.getPoint(q);
            WEIGHT[q] = rule.getWeight(q) / Math.sqrt(Math.PI);
        }
    }

    /** Sobol points as standard normal deviates, by number of draws; computed once. */
    private static final Map<Integer, double[]> POINTS = new ConcurrentHashMap<>();

    private final double[] nodeFactor = new double[NODES];
    private final int critical;
    private final double[] stepFactor;

    /** Chance of each critical step at the state last looked at. */
    private final double[] stepChance;

    /**
     * @param critical number of critical steps
     * @param assessmentVariance variance of the whole-assessment effect
     */
    WholeCase(int critical, double assessmentVariance) {
        this.critical = critical;
        stepFactor = new double[critical];
        stepChance = new double[critical];
        double sd = Math.sqrt(assessmentVariance);
        for (int q = 0; q < NODES; q++) {
            nodeFactor[q] = Math.exp(-sd * NODE[q]);
        }
    }

    /**
     * Standard normal deviates of a Sobol sequence, {@code draws × dimensions}; midpoints in every dimension, for draws
     * a power of two.
     */
    static double[] normals(int draws, int dimensions) {
        SobolSequenceGenerator sobol = new SobolSequenceGenerator(dimensions);
        NormalDistribution normal = NormalDistribution.of(0, 1);
        double[] z = new double[draws * dimensions];
        for (int i = 0; i < draws; i++) {
            double[] u = sobol.nextVector();
            for (int k = 0; k < dimensions; k++) {
                z[i * dimensions + k] = normal.inverseCumulativeProbability(u[k] + 0.5 / draws);
            }
        }
        return z;
    }

    /**
     * Draws of a normal law at fixed points, {@code draws × n}.
     *
     * @param inflation factor on the covariance
     */
    static double[] draw(NextCase law, double inflation, int draws) {
        int n = law.size();
        int stride = Math.max(n, USUAL_DIMENSIONS);
        double[] z = n <= USUAL_DIMENSIONS
                ? POINTS.computeIfAbsent(draws, count -> normals(count, USUAL_DIMENSIONS))
                : normals(draws, n);
        double[] factor = new double[n * n];
        for (int i = 0; i < factor.length; i++) {
            factor[i] = inflation * law.covariance()[i];
        }
        for (int i = 0; i < n; i++) {
            factor[i * n + i] += 1e-12;
        }
        Dense.cholesky(factor, n);
        double[] x = new double[draws * n];
        for (int i = 0; i < draws; i++) {
            Dense.add(x, i * n, law.mean(), 0, 0, n, 1);
            for (int k = 0; k < n; k++) {
                Dense.add(x, i * n, factor, k * n, k, n, z[i * stride + k]);
            }
        }
        return x;
    }

    /** Sets the critical steps' own locations, effect less difficulty less threshold. */
    void steps(double[] draws, int at, double[] offset) {
        for (int c = 0; c < critical; c++) {
            stepFactor[c] = Math.exp(Math.max(-40, Math.min(40, offset[c] - draws[at + 2 + c])));
        }
    }

    /** Chance of the whole case at a common location; also sets {@link #stepChance}. */
    double chance(double common) {
        double base = Math.exp(-Math.max(-40, Math.min(40, common)));
        double sum = 0;
        for (int c = 0; c < critical; c++) {
            stepChance[c] = 0;
        }
        for (int q = 0; q < NODES; q++) {
            double odds = base * nodeFactor[q];
            double product = WEIGHT[q];
            for (int c = 0; c < critical; c++) {
                double g = 1 / (1 + Math.min(odds * stepFactor[c], LARGEST));
                product *= g;
                stepChance[c] += WEIGHT[q] * g;
            }
            sum += product;
        }
        return sum;
    }

    /** Chance of the whole case only, one division a node. */
    double wholeChance(double common) {
        double base = Math.exp(-Math.max(-40, Math.min(40, common)));
        double sum = 0;
        for (int q = 0; q < NODES; q++) {
            double odds = base * nodeFactor[q];
            double product = 1;
            for (int c = 0; c < critical; c++) {
                product *= 1 + Math.min(odds * stepFactor[c], LARGEST);
                product = Math.min(product, 1e250);
            }
            sum += WEIGHT[q] / product;
        }
        return sum;
    }

    double stepChance(int c) {
        return stepChance[c];
    }

    /** Chance of one step at a location above its threshold, the whole-assessment effect integrated. */
    double one(double above) {
        double base = Math.exp(-Math.max(-40, Math.min(40, above)));
        double sum = 0;
        for (int q = 0; q < NODES; q++) {
            sum += WEIGHT[q] / (1 + base * nodeFactor[q]);
        }
        return sum;
    }
}
