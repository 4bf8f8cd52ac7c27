package org.scrubline.command;

import static org.scrubline.command.StatisticResult.inKey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.estimate.AngoffPanel;
import org.scrubline.scoring.estimate.BorderlineRegression;
import org.scrubline.scoring.estimate.CurveShape;
import org.scrubline.scoring.estimate.LearningCurveFit;
import org.scrubline.scoring.estimate.MonotoneFit;
import org.scrubline.scoring.estimate.Quantile;
import org.scrubline.scoring.reliability.IntraclassCorrelation;

/** Standard setting, curve shapes, quantiles. */
final class EstimateMethods {
    private static final Map<String, CurveShape> SHAPES = Map.of(
            "exp_rise", CurveShape.EXP_RISE,
            "power", CurveShape.POWER,
            "logistic3", CurveShape.LOGISTIC3,
            "chwirut", CurveShape.DECAY);

    private EstimateMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("borderline_regression", EstimateMethods::borderlineRegression);
        methods.put("angoff", EstimateMethods::angoff);
        methods.put("nls", EstimateMethods::learningCurve);
        methods.put("isotonic", EstimateMethods::isotonic);
        methods.put("quantile", EstimateMethods::quantiles);
    }

    private static void borderlineRegression(StatisticData data, StatisticResult result) {
        BorderlineRegression line = BorderlineRegression.of(
                data.numbers("global_rating"), data.numbers("checklist"), data.number("borderline"), data.confidence());
        String nobody = "is undefined because nobody was rated borderline";
        result.put("intercept", line.intercept());
        result.put("slope", line.slope());
        result.put("R2", line.determination(), "is undefined because the scores do not vary");
        result.put("sigma", line.residualDeviation());
        result.put("cut", line.cut());
        result.put("cut.se", line.standardError());
        result.put("cut.ci.low", "cut.ci.high", line.interval());
        result.put("borderline.group.mean", line.groupMean(), nobody);
        result.put("borderline.group.median", line.groupMedian(), nobody);
        result.put("borderline.group.n", line.groupSize());
        result.put("n.fail", line.belowCut());
    }

    private static void angoff(StatisticData data, StatisticResult result) {
        double[][] ratings = data.matrix("ratings");
        AngoffPanel panel = AngoffPanel.of(ratings, data.confidence());
        result.put("cut.raw", panel.cut());
        result.put("cut.percent", panel.percent());
        result.put("judge.sd", panel.deviation());
        result.put("se", panel.standardError());
        result.put("ci.low", "ci.high", panel.interval());
        for (int j = 0; j < ratings.length; j++) {
            result.put("judge." + (j + 1), panel.judges().get(j));
        }
        if (ratings[0].length < 2) {
            result.note("ICC2, ICC2k and ICC3k need at least 2 items");
            return;
        }
        IntraclassCorrelation icc = IntraclassCorrelation.of(transposed(ratings), data.confidence());
        String equal = "is undefined because the judgements do not vary";
        result.put("ICC2", icc.randomRatersSingle().value(), equal);
        result.put("ICC2k", icc.randomRatersMean().value(), equal);
        result.put("ICC3k", icc.fixedRatersMean().value(), equal);
    }

    private static double[][] transposed(double[][] matrix) {
        double[][] transposed = new double[matrix[0].length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < transposed.length; j++) {
                transposed[j][i] = matrix[i][j];
            }
        }
        return transposed;
    }

    /** The best of the fits from all start values; a start from which the fit does not converge is noted. */
    private static void learningCurve(StatisticData data, StatisticResult result) {
        LearningCurveFit best = bestFit(shape(data.text("model")), data, result);
        for (int k = 0; k < best.parameters().size(); k++) {
            result.put("b" + (k + 1), best.parameters().get(k));
            result.put("b" + (k + 1) + ".se", best.standardErrors().get(k));
        }
        result.put("rss", best.residualSquares());
        result.put("sigma", best.sigma());
        result.put("df", best.degrees());
    }

    private static CurveShape shape(String name) {
        CurveShape shape = SHAPES.get(name);
        if (shape == null) {
            throw new IllegalArgumentException("There is no curve named " + name + "; use one of "
                    + String.join(", ", new TreeSet<>(SHAPES.keySet())) + ".");
        }
        return shape;
    }

    private static LearningCurveFit bestFit(CurveShape shape, StatisticData data, StatisticResult result) {
        List<LearningCurveFit> fits = new ArrayList<>();
        String failure = "\"starts\" is empty.";
        for (double[] start : data.matrix("starts")) {
            try {
                fits.add(LearningCurveFit.of(shape, data.numbers("x"), data.numbers("y"), start));
            } catch (IllegalArgumentException failed) {
                failure = String.valueOf(failed.getMessage());
                result.note(failure.replaceAll("\\.$", ""));
            }
        }
        String reason = failure;
        return fits.stream()
                .min(Comparator.comparingDouble(LearningCurveFit::residualSquares))
                .orElseThrow(() -> new IllegalArgumentException(reason));
    }

    private static void isotonic(StatisticData data, StatisticResult result) {
        double[] y = data.numbers("y");
        List<Double> fit = data.has("w") ? MonotoneFit.of(y, data.numbers("w")) : MonotoneFit.of(y);
        for (int i = 0; i < fit.size(); i++) {
            result.put("fit." + (i + 1), fit.get(i));
        }
    }

    private static void quantiles(StatisticData data, StatisticResult result) {
        double[] x = data.numbers("x");
        for (double p : data.numbers("probs")) {
            for (Quantile type : Quantile.values()) {
                result.put(type + "." + inKey(p), type.of(p, x));
            }
        }
    }
}
