package org.scrubline.scoring.ordinal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.scrubline.scoring.QuasiNewton;
import org.scrubline.scoring.Require;

/**
 * Proportional-odds regression with one normal random intercept a group: logit P(Y ≤ j) = theta_j - eta - u_group.
 *
 * <p>The random intercept is integrated out by adaptive Gauss-Hermite quadrature around each group's mode; one node is
 * Laplace's approximation. The likelihood is maximised by BFGS, standard errors are from the numerical curvature at the
 * maximum, the deviation of groups among its variables. Check by doubling the nodes. Agreement of the likelihood with
 * independent programs is about 1e-6.
 *
 * <p>Tutz and Hennevogl, Comput Stat Data Anal 1996;22:537, doi:10.1016/0167-9473(96)00004-7; Pinheiro and Bates, J
 * Comput Graph Stat 1995;4:12, doi:10.1080/10618600.1995.10474663.
 *
 * @param logLikelihood marginal, at the estimates
 * @param groupVariance of the random intercept; 0 (below 1e-9) when the groups do not differ more than chance
 * @param thresholds theta_1, theta_2, ..., rising, one fewer than categories
 * @param coefficients by covariate name, in order; effects within a group
 */
public record MixedCumulativeLogit(
        double logLikelihood, double groupVariance, List<Estimate> thresholds, Map<String, Estimate> coefficients) {
    private static final double STEP = 1e-3;
    private static final double CURVATURE_STEP = 1e-2;
    private static final double TOLERANCE = 1e-6;

    /**
     * The fit.
     *
     * @param data responses and covariates
     * @param groups group name of each response, at least two different
     * @param nodes of the quadrature, 1 to 100
     * @return the estimates
     * @throws IllegalArgumentException when the numbers of responses and groups differ, there is one group only, nodes
     *     are out of their range, the likelihood has no single maximum, or the fit does not converge
     */
    public static MixedCumulativeLogit of(OrdinalData data, List<String> groups, int nodes) {
        Require.sameLength("The list of responses", data.size(), "the list of groups", groups.size());
        Require.that(nodes >= 1 && nodes <= 100, "The number of nodes must lie from 1 to 100, but is %s.", nodes);
        Likelihood likelihood = new Likelihood(data, groups, nodes);
        int last = data.thresholds() + data.names().size();
        double[] start = data.start(last + 1);
        start[last] = 1;
        QuasiNewton.Objective objective = QuasiNewton.differentiated(likelihood::negative, STEP);
        double[] at = QuasiNewton.minimise(objective, start, TOLERANCE, last).toArray();
        try {
            return result(data, at, likelihood, objective);
        } catch (MathRuntimeException flat) {
            throw new IllegalArgumentException(
                    "The likelihood has no single maximum; two covariates may say the same, or one may separate the"
                            + " categories.",
                    flat);
        }
    }

    private static MixedCumulativeLogit result(
            OrdinalData data, double[] at, Likelihood likelihood, QuasiNewton.Objective objective) {
        int last = at.length - 1;
        double variance = at[last] * at[last];
        RealMatrix information = MatrixUtils.createRealMatrix(QuasiNewton.hessian(objective, at, CURVATURE_STEP));
        RealMatrix covariance =
                new CholeskyDecomposition(information, 1e-6, 1e-9).getSolver().getInverse();
        List<Estimate> estimates = new ArrayList<>();
        for (int k = 0; k < last; k++) {
            estimates.add(new Estimate(at[k], Math.sqrt(covariance.getEntry(k, k))));
        }
        Map<String, Estimate> coefficients = new LinkedHashMap<>();
        for (int k = 0; k < data.names().size(); k++) {
            coefficients.put(data.names().get(k), estimates.get(data.thresholds() + k));
        }
        return new MixedCumulativeLogit(
                -likelihood.negative(at),
                variance < 1e-9 ? 0 : variance,
                List.copyOf(estimates.subList(0, data.thresholds())),
                coefficients);
    }

    /** Minus the marginal log-likelihood; the last parameter is the standard deviation of the groups, sign ignored. */
    private static final class Likelihood {
        private static final int MOST_STEPS = 100;

        private final OrdinalData data;
        private final List<int[]> members = new ArrayList<>();
        private final GaussIntegrator rule;

        private Likelihood(OrdinalData data, List<String> groups, int nodes) {
            this.data = data;
            rule = new GaussIntegratorFactory().hermite(nodes);
            TreeSet<String> names = new TreeSet<>(groups);
            Require.that(names.size() >= 2, "A random effect needs at least 2 groups, but has %s.", names.size());
            for (String name : names) {
                members.add(java.util.stream.IntStream.range(0, groups.size())
                        .filter(i -> groups.get(i).equals(name))
                        .toArray());
            }
        }

        private double negative(double[] parameters) {
            for (int j = 1; j < data.thresholds(); j++) {
                if (!(parameters[j] > parameters[j - 1])) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            double sum = 0;
            for (int[] group : members) {
                sum -= marginal(group, parameters);
            }
            return sum;
        }

        private double marginal(int[] group, double[] parameters) {
            double[] mode = mode(group, parameters);
            double spread = 1 / Math.sqrt(-mode[1]);
            double height = joint(group, parameters, mode[0])[0];
            double sum = 0;
            for (int q = 0; q < rule.getNumberOfPoints(); q++) {
                double t = rule.getPoint(q);
                double value = joint(group, parameters, mode[0] + Math.sqrt(2) * spread * t)[0];
                sum += rule.getWeight(q) * Math.exp(t * t + value - height);
            }
            return height + Math.log(spread * sum / Math.sqrt(Math.PI));
        }

        /** The mode of a group's standardised effect and the second derivative of the joint log density there. */
        private double[] mode(int[] group, double[] parameters) {
            double u = 0;
            double[] at = joint(group, parameters, u);
            for (int step = 0; step < MOST_STEPS && Math.abs(at[1]) > 1e-12; step++) {
                double move = -at[1] / at[2];
                double[] next = joint(group, parameters, u + move);
                while (next[0] < at[0] - 1e-12 * Math.abs(at[0])) {
                    move /= 2;
                    next = joint(group, parameters, u + move);
                }
                u += move;
                at = next;
                if (Math.abs(move) < 1e-14 * (1 + Math.abs(u))) {
                    break;
                }
            }
            return new double[] {u, at[2]};
        }

        /** Joint log density of a group's responses and its standardised effect, with two derivatives by the effect. */
        private double[] joint(int[] group, double[] parameters, double u) {
            double sigma = parameters[parameters.length - 1];
            double value = -u * u / 2;
            double slope = -u;
            double curvature = -1;
            for (int i : group) {
                CumulativeLogit response = new CumulativeLogit(
                        data.category(i), parameters, data.thresholds(), data.predictor(i, parameters) + sigma * u);
                value += response.logProbability;
                slope += sigma * response.slope;
                curvature += sigma * sigma * response.curvature;
            }
            return new double[] {value, slope, curvature};
        }
    }
}
