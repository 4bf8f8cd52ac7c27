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
 * <p>Input: n x k numbers without gaps, n and k at least 2. With the mean squares B between subjects, W within
 * subjects, R between raters and E residual:
 *
 * <pre>
 * (1) single (B - W) / (B + (k - 1) W)                    mean (B - W) / B
 * (2) single (B - E) / (B + (k - 1) E + k (R - E) / n)    mean (B - E) / (B + (R - E) / n)
 * (3) single (B - E) / (B + (k - 1) E)                    mean (B - E) / B
 * </pre>
 *
 * <p>Negative values and limits are legal results and are not set to 0. None is above 1 but the mean of (2) where E is
 * above n B + R: its denominator is then negative and the value says nothing. A form whose denominator is 0 is empty:
 * all forms when all ratings are equal, the means of (1) and (3) when subjects do not differ. Limits of forms (1) and
 * (3) are exact under the normal model and empty without error (W or E of 0); those of form (2) use Satterthwaite
 * degrees of freedom, and the limits of its mean are their Spearman-Brown projection. An interval one of whose limits
 * does not exist is empty. Sums of squares below 1e-14 of the total count as 0. Accuracy about 1e-12.
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
     * @param ratings subjects x raters, at least 2 of each
     * @param confidence of the intervals, strictly between 0 and 1, for example .95
     * @return the study
     * @throws IllegalArgumentException when the table is too small, not rectangular or holds something that is no
     *     number, or the confidence is out of its range
     */
    public static IntraclassCorrelation of(double[][] ratings, double confidence) {
        return new IntraclassCorrelation(new TwoWayTable("The table of ratings", ratings), confidence);
    }

    /** {@return B, the mean square between subjects, n - 1 degrees of freedom} */
    public double betweenSubjects() {
        return subjects;
    }

    /** {@return W, the mean square within subjects, n (k - 1) degrees of freedom} */
    public double withinSubjects() {
        return within;
    }

    /** {@return R, the mean square between raters, k - 1 degrees of freedom} */
    public double betweenRaters() {
        return raters;
    }

    /** {@return E, the residual mean square, (n - 1) (k - 1) degrees of freedom} */
    public double residual() {
        return error;
    }

    /** {@return the F test of form (1), B / W; empty when W is 0} */
    public OptionalDouble oneWayF() {
        return Ratio.of(subjects, within);
    }

    /** {@return the F test of forms (2) and (3), B / E; empty when E is 0} */
    public OptionalDouble twoWayF() {
        return Ratio.of(subjects, error);
    }

    /**
     * {@return the standard error of measurement of one rating when raters are a sample, sqrt(W): the root of all
     * variance but that of subjects}
     */
    public double standardErrorOfMeasurement() {
        return Math.sqrt(within);
    }

    /** {@return form (1), single rating} */
    public Form oneWaySingle() {
        return new Form(
                Ratio.of(subjects - within, subjects + (k - 1) * within),
                limits(subjects, within, n * (k - 1)).flatMap(f -> map(f, x -> (x - 1) / (x + k - 1))));
    }

    /** {@return form (1), mean of k ratings} */
    public Form oneWayMean() {
        return new Form(
                Ratio.of(subjects - within, subjects),
                limits(subjects, within, n * (k - 1)).flatMap(f -> map(f, x -> 1 - 1 / x)));
    }

    /** {@return form (3), single rating} */
    public Form fixedRatersSingle() {
        return new Form(
                Ratio.of(subjects - error, subjects + (k - 1) * error),
                limits(subjects, error, (n - 1) * (k - 1)).flatMap(f -> map(f, x -> (x - 1) / (x + k - 1))));
    }

    /** {@return form (3), mean of k ratings; equals Cronbach's alpha} */
    public Form fixedRatersMean() {
        return new Form(
                Ratio.of(subjects - error, subjects),
                limits(subjects, error, (n - 1) * (k - 1)).flatMap(f -> map(f, x -> 1 - 1 / x)));
    }

    /** {@return form (2), single rating} */
    public Form randomRatersSingle() {
        OptionalDouble value = Ratio.of(subjects - error, subjects + (k - 1) * error + k * (raters - error) / n);
        return new Form(value, randomRatersLimits(value));
    }

    /** {@return form (2), mean of k ratings} */
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
