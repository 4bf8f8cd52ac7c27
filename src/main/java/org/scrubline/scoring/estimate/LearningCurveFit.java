package org.scrubline.scoring.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;
import org.scrubline.scoring.Require;

/**
 * A learning-curve shape fitted by least squares, by Levenberg-Marquardt from given start values and a few Gauss-Newton
 * steps at the end.
 *
 * <p>The minimum found is the one the start leads to; another start may end elsewhere. Standard errors: square roots of
 * the diagonal of sigma² (J'J)^-1 at the fit, J the derivatives by the parameters, sigma² = rss / (n - parameters); all
 * 0 when the curve meets every point. More observations than parameters are needed. On four certified data sets of the
 * NIST Statistical Reference Datasets for nonlinear regression, one a shape, both certified starts reach parameters,
 * standard errors and rss to 1e-6 or better, relative.
 *
 * <p>Levenberg, Q Appl Math 1944;2:164, doi:10.1090/qam/10666; Marquardt, J Soc Ind Appl Math 1963;11:431,
 * doi:10.1137/0111030.
 *
 * @param parameters estimates, in the order of the shape
 * @param standardErrors one for each, 0 or more
 * @param residualSquares rss, sum of squared residuals
 * @param sigma residual standard deviation, in the units of y
 * @param degrees of freedom, n - parameters, at least 1
 */
public record LearningCurveFit(
        List<Double> parameters, List<Double> standardErrors, double residualSquares, double sigma, int degrees) {
    private static final int STEPS = 50;
    private static final double ROUNDING = 1e-12;
    private static final double SETTLED = 1e-14;
    private static final int EVALUATIONS = 20_000;

    /**
     * The fit from one vector of start values.
     *
     * @param shape the curve
     * @param x places, one for each y, more than parameters; above 0 for {@link CurveShape#POWER}
     * @param y observations
     * @param start one value for each parameter
     * @return the fit
     * @throws IllegalArgumentException when lists differ in length, are short or hold something that is no number, when
     *     the fit does not converge from here, or the data say nothing about a parameter
     */
    public static LearningCurveFit of(CurveShape shape, double[] x, double[] y, double[] start) {
        requireData(shape, x, y, start);
        RealVector point;
        try {
            LeastSquaresProblem problem = new LeastSquaresBuilder()
                    .start(start)
                    .model(model(shape, x))
                    .target(y)
                    .maxEvaluations(EVALUATIONS)
                    .maxIterations(EVALUATIONS)
                    .build();
            point = new LevenbergMarquardtOptimizer().optimize(problem).getPoint();
            return summary(shape, x, y, polished(shape, x, y, point));
        } catch (MathRuntimeException failed) {
            throw new IllegalArgumentException(
                    "The curve does not converge from the start values " + Arrays.toString(start) + ".", failed);
        }
    }

    private static void requireData(CurveShape shape, double[] x, double[] y, double[] start) {
        Require.sameLength("x", x.length, "y", y.length);
        Require.finite("x", x, shape.parameters() + 1);
        Require.finite("y", y, shape.parameters() + 1);
        Require.finite("The vector of start values", start, shape.parameters());
        Require.sameLength("The shape", shape.parameters(), "the vector of start values", start.length);
        for (double value : x) {
            Require.that(shape != CurveShape.POWER || value > 0, "A power curve needs x above 0, not %s.", value);
        }
    }

    private static MultivariateJacobianFunction model(CurveShape shape, double[] x) {
        return b -> {
            double[] values = b.toArray();
            double[] fitted =
                    Arrays.stream(x).map(at -> shape.value(at, values)).toArray();
            return new Pair<>(new ArrayRealVector(fitted, false), jacobian(shape, x, values));
        };
    }

    private static RealMatrix jacobian(CurveShape shape, double[] x, double[] b) {
        double[][] rows = Arrays.stream(x).mapToObj(at -> shape.gradient(at, b)).toArray(double[][]::new);
        return MatrixUtils.createRealMatrix(rows);
    }

    private static double[] residuals(CurveShape shape, double[] x, double[] y, double[] b) {
        double[] residuals = new double[y.length];
        for (int i = 0; i < y.length; i++) {
            residuals[i] = y[i] - shape.value(x[i], b);
        }
        return residuals;
    }

    private static double squares(double[] residuals) {
        return Arrays.stream(residuals).map(e -> e * e).sum();
    }

    /** Gauss-Newton steps with columns scaled to length 1, each kept unless it makes the fit worse by more than rounding. */
    private static double[] polished(CurveShape shape, double[] x, double[] y, RealVector from) {
        double[] b = from.toArray();
        for (int step = 0; step < STEPS; step++) {
            double[] residuals = residuals(shape, x, y, b);
            RealMatrix jacobian = jacobian(shape, x, b);
            double[] lengths = scaleColumns(jacobian);
            double[] move = new QRDecomposition(jacobian, 1e-13)
                    .getSolver()
                    .solve(new ArrayRealVector(residuals, false))
                    .toArray();
            double[] next = b.clone();
            for (int k = 0; k < b.length; k++) {
                next[k] += move[k] / lengths[k];
            }
            double allowed = squares(residuals) * (1 + ROUNDING);
            if (!(squares(residuals(shape, x, y, next)) <= allowed)) {
                break;
            }
            boolean settled = largestRelativeMove(b, next) < SETTLED;
            b = next;
            if (settled) {
                break;
            }
        }
        return b;
    }

    private static double largestRelativeMove(double[] from, double[] to) {
        double largest = 0;
        for (int k = 0; k < from.length; k++) {
            largest = Math.max(largest, Math.abs(to[k] - from[k]) / Math.max(Math.abs(to[k]), Double.MIN_NORMAL));
        }
        return largest;
    }

    private static double[] scaleColumns(RealMatrix jacobian) {
        double[] lengths = new double[jacobian.getColumnDimension()];
        for (int k = 0; k < lengths.length; k++) {
            lengths[k] = jacobian.getColumnVector(k).getNorm();
            Require.that(
                    lengths[k] > 0 && Double.isFinite(lengths[k]),
                    "The data say nothing about parameter %s of the curve.",
                    k + 1);
            jacobian.setColumnVector(k, jacobian.getColumnVector(k).mapDivide(lengths[k]));
        }
        return lengths;
    }

    private static LearningCurveFit summary(CurveShape shape, double[] x, double[] y, double[] b) {
        RealMatrix jacobian = jacobian(shape, x, b);
        double[] lengths = scaleColumns(jacobian);
        RealMatrix root = new QRDecomposition(jacobian, 1e-13).getSolver().getInverse();
        double residualSquares = squares(residuals(shape, x, y, b));
        int degrees = y.length - b.length;
        double sigma = Math.sqrt(residualSquares / degrees);
        List<Double> estimates = new ArrayList<>();
        List<Double> errors = new ArrayList<>();
        for (int k = 0; k < b.length; k++) {
            estimates.add(Require.finite("A fitted parameter", b[k]));
            errors.add(sigma * root.getRowVector(k).getNorm() / lengths[k]);
        }
        return new LearningCurveFit(List.copyOf(estimates), List.copyOf(errors), residualSquares, sigma, degrees);
    }
}
