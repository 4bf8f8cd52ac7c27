package org.scrubline.scoring.reliability;

import static org.scrubline.scoring.Distributions.fQuantile;

import java.util.Optional;
import java.util.OptionalDouble;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.estimate.Interval;

/**
 * The six intraclass correlations of n subjects scored by k raters, with their intervals.
 *
 * <p>Form (1): each subject has its own raters; (2): the same raters, a sample of those who might score; (3): the same
 * raters, the only ones of interest. "Single" is the reliability of one rating, "mean" of the mean of k. Work-place
 * scores by whoever was present are form (1), or a generalizability study; never form (3).
 *
 * <p>Input: n x k numbers without gaps, n and k at least 2. Negative values and limits are legal results and are not
 * set to 0. A form without variance to compare (all ratings equal) is empty. Limits of forms (1) and (3) are exact under
 * the normal model; those of form (2) use Satterthwaite degrees of freedom, and the limits of its mean are their
 * Spearman-Brown projection. Accuracy about 1e-12.
 *
 * <p>Shrout and Fleiss, Psychol Bull 1979;86:420, doi:10.1037/0033-2909.86.2.420; McGraw and Wong, Psychol Methods
 * 1996;1:30, doi:10.1037/1082-989X.1.1.30.
 */
public final class IntraclassCorrelation {

    /**
     * One form.
     *
     * @param value the coefficient; empty when there is no variance to divide
     * @param interval its two-sided interval; empty when it does not exist
     */
    public record Form(OptionalDouble value, Optional<Interval> interval) {}

    private final double n;
    private final double k;
    private final double subjects;
    private final double within;
    private final double raters;
    private final double error;
    private final double tail;

    private IntraclassCorrelation(TwoWayTable table, double confidence) {
        n = table.rows;
        k = table.columns;
        subjects = table.rowMeanSquare;
        within = table.withinRowMeanSquare;
        raters = table.columnMeanSquare;
        error = table.residualMeanSquare;
        tail = 1 - (1 - Require.insideUnit("The confidence", confidence)) / 2;
    }

    /**
     * The coefficients of a table of ratings.
     *
     * @param ratings subjects x raters
     * @param confidence of the intervals, for example .95
     */
    public static IntraclassCorrelation of(double[][] ratings, double confidence) {
        return new IntraclassCorrelation(new TwoWayTable("The table of ratings", ratings), confidence);
    }

    /** Mean square between subjects. */
    public double betweenSubjects() {
        return subjects;
    }

    /** Mean square within subjects. */
    public double withinSubjects() {
        return within;
    }

    /** Mean square between raters. */
    public double betweenRaters() {
        return raters;
    }

    /** Residual mean square. */
    public double residual() {
        return error;
    }

    /** F test of form (1): between over within subjects. */
    public OptionalDouble oneWayF() {
        return Ratio.of(subjects, within);
    }

    /** F test of forms (2) and (3): between subjects over residual. */
    public OptionalDouble twoWayF() {
        return Ratio.of(subjects, error);
    }

    /** Standard error of measurement of one rating when raters are a sample: the square root of all but subjects. */
    public double standardErrorOfMeasurement() {
        return Math.sqrt(within);
    }

    /** Form (1), single rating. */
    public Form oneWaySingle() {
        return new Form(
                Ratio.of(subjects - within, subjects + (k - 1) * within),
                limits(subjects, within, n * (k - 1)).flatMap(f -> map(f, x -> (x - 1) / (x + k - 1))));
    }

    /** Form (1), mean of k ratings. */
    public Form oneWayMean() {
        return new Form(
                Ratio.of(subjects - within, subjects),
                limits(subjects, within, n * (k - 1)).flatMap(f -> map(f, x -> 1 - 1 / x)));
    }

    /** Form (3), single rating. */
    public Form fixedRatersSingle() {
        return new Form(
                Ratio.of(subjects - error, subjects + (k - 1) * error),
                limits(subjects, error, (n - 1) * (k - 1)).flatMap(f -> map(f, x -> (x - 1) / (x + k - 1))));
    }

    /** Form (3), mean of k ratings; equals Cronbach's alpha. */
    public Form fixedRatersMean() {
        return new Form(
                Ratio.of(subjects - error, subjects),
                limits(subjects, error, (n - 1) * (k - 1)).flatMap(f -> map(f, x -> 1 - 1 / x)));
    }

    /** Form (2), single rating. */
    public Form randomRatersSingle() {
        OptionalDouble value = Ratio.of(subjects - error, subjects + (k - 1) * error + k * (raters - error) / n);
        return new Form(value, randomRatersLimits(value));
    }

    /** Form (2), mean of k ratings. */
    public Form randomRatersMean() {
        return new Form(
                Ratio.of(subjects - error, subjects + (raters - error) / n),
                randomRatersSingle().interval().flatMap(single -> map(single, x -> k * x / (1 + (k - 1) * x))));
    }

    private Optional<Interval> randomRatersLimits(OptionalDouble value) {
        if (value.isEmpty()) {
            return Optional.empty();
        }
        double icc = value.getAsDouble();
        double ofRaters = k * icc * raters;
        double ofError = (n * (1 + (k - 1) * icc) - k * icc) * error;
        double degrees = (k - 1)
                * (n - 1)
                * TwoWayTable.square(ofRaters + ofError)
                / ((n - 1) * ofRaters * ofRaters + ofError * ofError);
        if (!(degrees > 0)) {
            return Optional.empty();
        }
        double forLow = fQuantile(tail, n - 1, degrees);
        double forHigh = fQuantile(tail, degrees, n - 1);
        double spread = k * raters + (k * n - k - n) * error;
        return interval(
                n * (subjects - forLow * error) / (forLow * spread + n * subjects),
                n * (forHigh * subjects - error) / (spread + n * forHigh * subjects));
    }

    private Optional<Interval> limits(double numerator, double denominator, double degrees) {
        if (denominator == 0) {
            return Optional.empty();
        }
        double f = numerator / denominator;
        return interval(f / fQuantile(tail, n - 1, degrees), f * fQuantile(tail, degrees, n - 1));
    }

    private static Optional<Interval> map(Interval interval, java.util.function.DoubleUnaryOperator to) {
        return interval(to.applyAsDouble(interval.low()), to.applyAsDouble(interval.high()));
    }

    private static Optional<Interval> interval(double low, double high) {
        return Double.isFinite(low) && Double.isFinite(high) && low <= high
                ? Optional.of(new Interval(low, high))
                : Optional.empty();
    }
}
