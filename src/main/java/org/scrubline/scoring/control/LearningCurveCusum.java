package org.scrubline.scoring.control;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.scrubline.scoring.Require;

/**
 * The learning-curve CUSUM. The null hypothesis is that the failure rate is unacceptable; evidence of an acceptable
 * rate is added case by case, held at 0, and one signal ends it: S = max(0, S + W), signal when S reaches the limit
 * (slack 1e-12), W(success) = ln((1 - p0) / (1 - p1)) above 0, W(failure) = ln(p0 / p1) below 0.
 *
 * <p>After the signal an ordinary CUSUM takes over and looks for a return to a worse rate, starting from 0 with the
 * next case.
 *
 * <p>What the literature calls the true discovery rate is {@link #signalProbability} at an acceptable rate; what it
 * calls the false discovery rate is the same at an unacceptable rate, a false-signal probability. A limit says nothing
 * without its rates and its number of cases. Run lengths are exact, see {@link RunLength}.
 *
 * <p>Biau, Williams, Schlup, Nizard and Porcher, Br J Surg 2008;95:925; Biau and Porcher, Stat Med 2010,
 * doi:10.1002/sim.3947.
 *
 * @param acceptableRate p0, the acceptable failure rate, above 0 and below {@code unacceptableRate}
 * @param unacceptableRate p1, the failure rate that must not be taken for acceptable, below 1
 * @param limit height of the signal, above 0; one of 1e-12 or less signals at the first case
 */
public record LearningCurveCusum(double acceptableRate, double unacceptableRate, double limit) {

    /**
     * Checks the design.
     *
     * @param acceptableRate strictly between 0 and 1
     * @param unacceptableRate above it, below 1
     * @param limit finite, above 0
     * @throws IllegalArgumentException when a component is out of its range
     */
    public LearningCurveCusum {
        requireRates(acceptableRate, unacceptableRate);
        Require.positive("The limit", limit);
    }

    private static void requireRates(double acceptable, double unacceptable) {
        Require.insideUnit("The acceptable failure rate", acceptable);
        Require.insideUnit("The unacceptable failure rate", unacceptable);
        Require.that(
                acceptable < unacceptable,
                "The acceptable failure rate must be below the unacceptable one, but %s is not below %s.",
                acceptable,
                unacceptable);
    }

    private LogLikelihoodWeights weights() {
        return LogLikelihoodWeights.between(unacceptableRate, acceptableRate);
    }

    /** {@return the evidence of one success, above 0} */
    public double successWeight() {
        return weights().success();
    }

    /** {@return the evidence of one failure, below 0} */
    public double failureWeight() {
        return weights().failure();
    }

    /**
     * {@return the length of the shortest series of successes alone that signals; 1 or more for a limit above 1e-12}
     */
    public int shortestCleanRun() {
        return (int) Math.ceil((limit - RunLength.SLACK) / successWeight());
    }

    /**
     * {@return the case of the one signal, counted from 1; empty when the series has not signalled}
     *
     * @param failures in the order of the cases, true = failure; may be empty
     */
    public OptionalInt firstSignal(List<Boolean> failures) {
        return gathering(failures).stream()
                .filter(ChartPoint::signal)
                .mapToInt(ChartPoint::caseNumber)
                .findFirst();
    }

    /**
     * The chart over a series, watched after the signal by a CUSUM of the same two rates and the same limit.
     *
     * @param failures in the order of the cases, true = failure; may be empty
     * @return one point a case
     */
    public List<ChartPoint> path(List<Boolean> failures) {
        return path(failures, BernoulliCusum.between(acceptableRate, unacceptableRate, limit));
    }

    /**
     * The chart over a series.
     *
     * @param failures in the order of the cases, true = failure; may be empty
     * @param watch the chart that takes over with the case after the signal
     * @return one point a case, {@link ChartPoint.Stage#GATHERING} up to the signal, {@link ChartPoint.Stage#WATCHING}
     *     after it
     */
    public List<ChartPoint> path(List<Boolean> failures, BernoulliCusum watch) {
        List<ChartPoint> points = gathering(failures);
        int gathered = points.size();
        points.addAll(watch.path(failures.subList(gathered, failures.size()), gathered));
        return List.copyOf(points);
    }

    private List<ChartPoint> gathering(List<Boolean> failures) {
        LogLikelihoodWeights weights = weights();
        List<ChartPoint> points = new ArrayList<>(failures.size());
        double value = 0;
        for (boolean failure : failures) {
            value = Math.max(0, value + (failure ? weights.failure() : weights.success()));
            boolean signal = value >= limit - RunLength.SLACK;
            points.add(new ChartPoint(points.size() + 1, value, signal, ChartPoint.Stage.GATHERING));
            if (signal) {
                break;
            }
        }
        return points;
    }

    /**
     * {@return the exact run length to the signal when cases fail independently with probability {@code failureRate}}
     *
     * @param failureRate 0 to 1
     * @throws IllegalArgumentException when it is not, or the limit is 1e5 times the sum of both weights' sizes or more
     */
    public RunLength runLength(double failureRate) {
        return weights().runLength(limit, failureRate);
    }

    /**
     * {@return the exact probability of the signal within {@code n} cases; 0 for n = 0}
     *
     * @param failureRate probability of a failure at each case, 0 to 1
     * @param n number of cases, 0 to 10 000
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public double signalProbability(double failureRate, int n) {
        return runLength(failureRate).signalProbability(n);
    }

    /**
     * {@return the first case, up to {@code n}, by which half of all series have signalled; empty when fewer have}
     *
     * @param failureRate probability of a failure at each case, 0 to 1
     * @param n number of cases, 0 to 10 000
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public OptionalInt medianSignalCase(double failureRate, int n) {
        return runLength(failureRate).medianCase(n);
    }

    /**
     * The smallest limit whose probability of a signal within {@code n} cases at the unacceptable rate is at most
     * {@code alpha}. Only heights the chart can reach matter: every limit between two of them is the same chart, so the
     * answer is the smallest reachable height that will do. Found by halving the sorted heights, about n² / 2 of them.
     *
     * @param acceptable failure rate p0, above 0 and below {@code unacceptable}
     * @param unacceptable failure rate p1, below 1
     * @param n number of cases, 1 to 1000
     * @param alpha largest false-signal probability, strictly between 0 and 1
     * @return a height a chart of n cases can reach
     * @throws IllegalArgumentException when an argument is out of its range, also when even n successes in a row are
     *     likelier than alpha
     */
    public static double smallestLimit(double acceptable, double unacceptable, int n, double alpha) {
        return SmallestLimit.reachable(requireDesign(acceptable, unacceptable, n, alpha), unacceptable, n, alpha);
    }

    /**
     * The smallest whole multiple of {@code gridStep} whose false-signal probability is at most {@code alpha}. Where no
     * chart that can signal within n cases keeps alpha, it is a multiple above the height of n successes, which never
     * signals within n.
     *
     * @param acceptable failure rate p0, above 0 and below {@code unacceptable}
     * @param unacceptable failure rate p1, below 1
     * @param n number of cases, 1 to 10 000
     * @param alpha largest false-signal probability, strictly between 0 and 1
     * @param gridStep above 0, not below a millionth of the height of n successes
     * @return a multiple of the step, 1 or more
     * @throws IllegalArgumentException when an argument is out of its range
     */
    public static double smallestLimit(double acceptable, double unacceptable, int n, double alpha, double gridStep) {
        Require.positive("The step of the grid", gridStep);
        LogLikelihoodWeights weights = requireDesign(acceptable, unacceptable, n, alpha);
        return SmallestLimit.onGrid(weights, unacceptable, n, alpha, gridStep);
    }

    private static LogLikelihoodWeights requireDesign(double acceptable, double unacceptable, int n, double alpha) {
        requireRates(acceptable, unacceptable);
        Require.atLeast("The number of cases", n, 1);
        Require.insideUnit("The false-signal probability", alpha);
        return LogLikelihoodWeights.between(unacceptable, acceptable);
    }
}
