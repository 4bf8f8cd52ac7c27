package org.scrubline.command;

import static org.scrubline.command.StatisticResult.inKey;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Ratio;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.control.BernoulliCusum;
import org.scrubline.scoring.control.ChartPoint;
import org.scrubline.scoring.control.EwmaChart;
import org.scrubline.scoring.control.LearningCurveCusum;
import org.scrubline.scoring.control.LogLikelihoodWeights;
import org.scrubline.scoring.control.RunLength;
import org.scrubline.scoring.control.SequentialTest;
import org.scrubline.scoring.control.TabularCusum;

/** Control charts. */
final class ControlMethods {
    private static final String NEVER = "does not exist because no signal can occur";

    private ControlMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("llr_weights", ControlMethods::weights);
        methods.put("bernoulli_path", ControlMethods::path);
        methods.put("bernoulli_arl", ControlMethods::runLengths);
        methods.put("lccusum", ControlMethods::learningCurve);
        methods.put("lccusum_smallest_h", ControlMethods::smallestLimit);
        methods.put("cusum_signal_prob", ControlMethods::signalProbability);
        methods.put("cusum_tabular", ControlMethods::tabular);
        methods.put("ewma", ControlMethods::ewma);
        methods.put("sprt_limits", ControlMethods::sequentialLimits);
    }

    private static void weights(StatisticData data, StatisticResult result) {
        int i = 0;
        for (StatisticData one : Require.notEmpty("The list of cases", data.cases("cases"))) {
            i++;
            double reference = one.has("logit") ? risk(one) : one.number("p0");
            LogLikelihoodWeights weights = one.has("odds_ratio")
                    ? LogLikelihoodWeights.forOddsRatio(reference, one.number("odds_ratio"))
                    : LogLikelihoodWeights.between(reference, one.number("p1"));
            result.put(i + ".p0", reference);
            result.put(i + ".w.success", weights.success());
            result.put(i + ".w.failure", weights.failure());
        }
    }

    private static double risk(StatisticData one) {
        double[] line = one.numbers("logit");
        Require.that(line.length == 2, "\"logit\" must hold an intercept and a slope.");
        return 1 / (1 + Math.exp(-line[0] - line[1] * one.number("score")));
    }

    private static void path(StatisticData data, StatisticResult result) {
        LogLikelihoodWeights weights = data.has("w_failure")
                ? new LogLikelihoodWeights(data.number("w_failure"), data.number("w_success"))
                : LogLikelihoodWeights.between(data.number("p0"), data.number("p1"));
        double limit = data.number("h", Double.MAX_VALUE);
        boolean[] marks = data.marks("failure");
        List<Boolean> failures =
                IntStream.range(0, marks.length).mapToObj(i -> marks[i]).toList();
        Require.notEmpty("\"failure\"", failures);
        List<ChartPoint> points = new BernoulliCusum(weights, limit, data.flag("reset_after_signal")).path(failures);
        result.put("w.failure", weights.failure());
        result.put("w.success", weights.success());
        points.forEach(point -> result.put("S." + point.caseNumber(), point.value()));
        List<ChartPoint> signals = points.stream().filter(ChartPoint::signal).toList();
        result.put("n.signals", signals.size());
        for (int k = 0; k < signals.size(); k++) {
            result.put("signal." + (k + 1), signals.get(k).caseNumber());
        }
    }

    private static void runLengths(StatisticData data, StatisticResult result) {
        LogLikelihoodWeights weights = LogLikelihoodWeights.between(data.number("p0"), data.number("p1"));
        result.put("w.failure", weights.failure());
        result.put("w.success", weights.success());
        for (double limit : data.numbers("h")) {
            for (double rate : data.numbers("true_failure")) {
                String place = ".h" + inKey(limit) + ".p" + inKey(rate);
                RunLength length = weights.runLength(limit, rate);
                putAverage(result, "ARL" + place, length);
                for (int n : data.wholesOrNone("N")) {
                    result.put("P.signal.by" + n + place, length.signalProbability(n));
                }
            }
        }
    }

    private static void putAverage(StatisticResult result, String key, RunLength length) {
        double average = length.average();
        result.put(key, Ratio.finite(average), NEVER);
    }

    private static void learningCurve(StatisticData data, StatisticResult result) {
        double p0 = data.number("p0_adequate_failure");
        double p1 = data.number("p1_inadequate_failure");
        double[] limits = Require.finite("\"h\"", data.numbers("h"), 1);
        LearningCurveCusum first = new LearningCurveCusum(p0, p1, limits[0]);
        result.put("w.success", first.successWeight());
        result.put("w.failure", first.failureWeight());
        for (double limit : limits) {
            LearningCurveCusum chart = new LearningCurveCusum(p0, p1, limit);
            String h = ".h" + inKey(limit);
            result.put("min.run.of.successes" + h, chart.shortestCleanRun());
            putAverage(result, "ARL.adequate" + h, chart.runLength(p0));
            putAverage(result, "ARL.inadequate" + h, chart.runLength(p1));
            for (int n : data.wholesOrNone("N")) {
                result.put("TDR.N" + n + h, chart.signalProbability(p0, n));
                result.put("FDR.N" + n + h, chart.signalProbability(p1, n));
            }
        }
    }

    private static void smallestLimit(StatisticData data, StatisticResult result) {
        double p0 = data.number("p0_adequate_failure");
        double p1 = data.number("p1_inadequate_failure");
        for (double cases : data.oneOrMore("N")) {
            for (double alpha : data.oneOrMore("alpha")) {
                Require.that(cases == Math.rint(cases), "The number of cases must be whole, but is %s.", cases);
                int n = (int) cases;
                double limit = data.has("grid_step")
                        ? LearningCurveCusum.smallestLimit(p0, p1, n, alpha, data.number("grid_step"))
                        : LearningCurveCusum.smallestLimit(p0, p1, n, alpha);
                LearningCurveCusum chart = new LearningCurveCusum(p0, p1, limit);
                String place = ".N" + n + ".alpha" + inKey(alpha);
                result.put("h" + place, limit);
                result.put("FDR" + place, chart.signalProbability(p1, n));
                result.put("TDR" + place, chart.signalProbability(p0, n));
            }
        }
    }

    /** A limit below 0 is that of a chart drawn downwards; only its distance counts. */
    private static void signalProbability(StatisticData data, StatisticResult result) {
        int i = 0;
        for (StatisticData one : Require.notEmpty("The list of cases", data.cases("cases"))) {
            i++;
            double rate = one.number("failure_probability");
            LogLikelihoodWeights weights = LogLikelihoodWeights.forOddsRatio(rate, one.number("odds_multiplier"));
            RunLength length = weights.runLength(Math.abs(one.number("limit")), rate);
            result.put(i + ".P.signal", length.signalProbability(one.whole("n")));
        }
    }

    private static void tabular(StatisticData data, StatisticResult result) {
        TabularCusum chart = new TabularCusum(data.number("target"), data.number("k"), data.number("h"));
        List<TabularCusum.Point> points = chart.path(data.numbers("x"));
        for (int i = 0; i < points.size(); i++) {
            TabularCusum.Point point = points.get(i);
            result.put("S.hi." + (i + 1), point.high());
            result.put("S.lo." + (i + 1), point.low());
            result.put("cusum." + (i + 1), point.sum());
        }
        result.put("first.signal", TabularCusum.firstSignal(points), "is undefined because no value signals");
    }

    private static void ewma(StatisticData data, StatisticResult result) {
        EwmaChart chart =
                new EwmaChart(data.number("lambda"), data.number("target"), data.number("sigma"), data.number("L"));
        List<Double> path = chart.path(data.numbers("x"));
        for (int i = 0; i < path.size(); i++) {
            result.put("ewma." + (i + 1), path.get(i));
        }
        result.put("ucl", chart.upperLimit());
        result.put("lcl", chart.lowerLimit());
    }

    private static void sequentialLimits(StatisticData data, StatisticResult result) {
        int i = 0;
        for (StatisticData one : Require.notEmpty("The list of cases", data.cases("cases"))) {
            i++;
            SequentialTest test =
                    new SequentialTest(one.number("p0"), one.number("p1"), one.number("alpha"), one.number("beta"));
            result.put(i + ".P", test.failureEvidence());
            result.put(i + ".Q", test.successEvidence());
            result.put(i + ".a", test.upperBound());
            result.put(i + ".b", test.lowerBound());
            result.put(i + ".s", test.slope());
            result.put(i + ".1-s", 1 - test.slope());
            result.put(i + ".h1", test.upperIntercept());
            result.put(i + ".h0", test.lowerIntercept());
        }
    }
}
