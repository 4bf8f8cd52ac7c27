package org.scrubline.scoring.ordinal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.scrubline.scoring.Require;

/**
 * Proportional-odds regression by maximum likelihood: logit P(Y ≤ j) = theta_j - eta, eta the sum of covariates times
 * coefficients, so a positive coefficient means higher categories.
 *
 * <p>Newton's method with step halving from the pooled shares and coefficients of 0; standard errors from the observed
 * information. The fit converges to about 1e-10. When a covariate separates the categories the maximum does not exist
 * and the fit is refused; it is taken to run away when a threshold or coefficient reaches 50 in size, so covariates
 * belong centred and in units in which a step of 1 means something.
 *
 * <p>McCullagh, J R Stat Soc B 1980;42:109, doi:10.1111/j.2517-6161.1980.tb01109.x.
 *
 * @param logLikelihood at the estimates, constants included, weighted
 * @param thresholds theta_1, theta_2, ..., rising, one fewer than categories
 * @param coefficients by covariate name, in order
 */
public record CumulativeLogitFit(double logLikelihood, List<Estimate> thresholds, Map<String, Estimate> coefficients) {
    private static final int MOST_STEPS = 100;
    private static final double FARTHEST = 50;

    /**
     * The fit with every response counting once.
     *
     * @param data responses and covariates
     * @return the estimates
     * @throws IllegalArgumentException when the likelihood has no single maximum, or the fit does not converge in 100
     *     steps
     */
    public static CumulativeLogitFit of(OrdinalData data) {
        double[] weights = new double[data.size()];
        java.util.Arrays.fill(weights, 1);
        return of(data, weights);
    }

    /**
     * The fit with a weight for each response, for example a count.
     *
     * @param data responses and covariates
     * @param weights 0 or more, one for each response; every category needs some
     * @return the estimates
     * @throws IllegalArgumentException when a weight is negative or no number, their number differs, the likelihood has
     *     no single maximum, or the fit does not converge in 100 steps
     */
    public static CumulativeLogitFit of(OrdinalData data, double[] weights) {
        Require.sameLength("The list of responses", data.size(), "the list of weights", weights.length);
        for (double weight : weights) {
            Require.that(weight >= 0 && Double.isFinite(weight), "A weight must be 0 or more, but is %s.", weight);
        }
        try {
            return newton(data, weights);
        } catch (MathRuntimeException flat) {
            throw new IllegalArgumentException(
                    "The likelihood has no single maximum; two covariates may say the same, or one may separate the"
                            + " categories.",
                    flat);
        }
    }

    private static CumulativeLogitFit newton(OrdinalData data, double[] weights) {
        double[] parameters = data.start(data.thresholds() + data.names().size());
        Point point = new Point(data, weights, parameters);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] move = new CholeskyDecomposition(point.information, 1e-9, 1e-12)
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(point.gradient))
                    .toArray();
            double gain = MatrixUtils.createRealVector(move).dotProduct(MatrixUtils.createRealVector(point.gradient));
            double length = 1;
            Point next = new Point(data, weights, moved(parameters, move, length));
            while (!(next.logLikelihood >= point.logLikelihood - 1e-12 * Math.abs(point.logLikelihood))) {
                length /= 2;
                Require.that(length > 1e-12, "The likelihood cannot be improved from here; the fit is refused.");
                next = new Point(data, weights, moved(parameters, move, length));
            }
            parameters = moved(parameters, move, length);
            point = next;
            for (double parameter : parameters) {
                Require.that(
                        Math.abs(parameter) < FARTHEST,
                        "The estimates run away; a covariate separates the categories, or a category has no weight.");
            }
            if (gain < 1e-18 * (1 + Math.abs(point.logLikelihood))) {
                return result(data, parameters, point);
            }
        }
        throw new IllegalArgumentException("The fit does not converge in " + MOST_STEPS + " steps.");
    }

    private static double[] moved(double[] parameters, double[] move, double length) {
        double[] next = parameters.clone();
        for (int k = 0; k < next.length; k++) {
            next[k] += length * move[k];
        }
        return next;
    }

    private static CumulativeLogitFit result(OrdinalData data, double[] parameters, Point point) {
        RealMatrix covariance = new CholeskyDecomposition(point.information, 1e-9, 1e-12)
                .getSolver()
                .getInverse();
        List<Estimate> estimates = new ArrayList<>();
        for (int k = 0; k < parameters.length; k++) {
            estimates.add(new Estimate(parameters[k], Math.sqrt(covariance.getEntry(k, k))));
        }
        Map<String, Estimate> coefficients = new LinkedHashMap<>();
        for (int k = 0; k < data.names().size(); k++) {
            coefficients.put(data.names().get(k), estimates.get(data.thresholds() + k));
        }
        return new CumulativeLogitFit(
                point.logLikelihood, List.copyOf(estimates.subList(0, data.thresholds())), coefficients);
    }

    /** Log-likelihood with gradient and observed information at one vector of parameters. */
    private static final class Point {
        private double logLikelihood;
        private final double[] gradient;
        private final RealMatrix information;

        private Point(OrdinalData data, double[] weights, double[] parameters) {
            gradient = new double[parameters.length];
            double[][] curvature = new double[parameters.length][parameters.length];
            for (int i = 0; i < weights.length; i++) {
                if (weights[i] > 0) {
                    add(data, i, weights[i], parameters, curvature);
                }
            }
            information = MatrixUtils.createRealMatrix(curvature);
        }

        private void add(OrdinalData data, int i, double weight, double[] parameters, double[][] curvature) {
            int upper = data.category(i);
            int thresholds = data.thresholds();
            CumulativeLogit at = new CumulativeLogit(upper, parameters, thresholds, data.predictor(i, parameters));
            logLikelihood += weight * at.logProbability;
            if (upper < thresholds) {
                gradient[upper] += weight * at.upperRatio;
                curvature[upper][upper] -= weight * at.upperCurvature();
            }
            if (upper > 0) {
                gradient[upper - 1] -= weight * at.lowerRatio;
                curvature[upper - 1][upper - 1] -= weight * at.lowerCurvature();
            }
            if (upper > 0 && upper < thresholds) {
                double both = weight * at.upperRatio * at.lowerRatio;
                curvature[upper][upper - 1] -= both;
                curvature[upper - 1][upper] -= both;
            }
            double[] row = data.row(i);
            for (int k = 0; k < row.length; k++) {
                int own = thresholds + k;
                gradient[own] += weight * at.slope * row[k];
                if (upper < thresholds) {
                    curvature[upper][own] -= weight * at.upperDensity * row[k];
                    curvature[own][upper] -= weight * at.upperDensity * row[k];
                }
                if (upper > 0) {
                    curvature[upper - 1][own] -= weight * at.lowerDensity * row[k];
                    curvature[own][upper - 1] -= weight * at.lowerDensity * row[k];
                }
                for (int l = 0; l < row.length; l++) {
                    curvature[own][thresholds + l] -= weight * at.curvature * row[k] * row[l];
                }
            }
        }
    }
}
