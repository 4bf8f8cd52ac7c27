package org.scrubline.scoring.ordinal;

/**
 * One response of a cumulative-logit model, P(Y ≤ j) = F(theta_j - eta), with its derivatives. Written so that no
 * difference of nearly equal probabilities is taken: p = F(a) F(-b) (1 - exp(b - a)) for upper and lower bounds a &gt;
 * b.
 */
final class CumulativeLogit {
    final double logProbability;
    /** First and second derivative of the log probability by eta. */
    final double slope;

    final double curvature;
    /** Density of the logistic distribution at the bounds over p; 0 at an infinite bound. */
    final double upperRatio;

    final double lowerRatio;
    final double upperDensity;
    final double lowerDensity;
    private final double upper;
    private final double lower;

    CumulativeLogit(int category, double[] parameters, int thresholds, double eta) {
        double a = category == thresholds ? Double.POSITIVE_INFINITY : parameters[category] - eta;
        double b = category == 0 ? Double.NEGATIVE_INFINITY : parameters[category - 1] - eta;
        double gap = -Math.expm1(b - a);
        upper = cumulative(a);
        lower = cumulative(b);
        logProbability = logCumulative(a) + logCumulative(-b) + Math.log(gap);
        upperDensity = upper * cumulative(-a);
        lowerDensity = lower * cumulative(-b);
        slope = upper - cumulative(-b);
        curvature = -(upperDensity + lowerDensity);
        upperRatio = Double.isInfinite(a) ? 0 : cumulative(-a) / (cumulative(-b) * gap);
        lowerRatio = Double.isInfinite(b) ? 0 : lower / (upper * gap);
    }

    /** Second derivative of the log probability by the upper threshold. */
    double upperCurvature() {
        return upperRatio * (1 - 2 * upper) - upperRatio * upperRatio;
    }

    /** Second derivative of the log probability by the lower threshold. */
    double lowerCurvature() {
        return -lowerRatio * (1 - 2 * lower) - lowerRatio * lowerRatio;
    }

    static double cumulative(double x) {
        return x >= 0 ? 1 / (1 + Math.exp(-x)) : Math.exp(x) / (1 + Math.exp(x));
    }

    private static double logCumulative(double x) {
        return x >= 0 ? -Math.log1p(Math.exp(-x)) : x - Math.log1p(Math.exp(x));
    }
}
