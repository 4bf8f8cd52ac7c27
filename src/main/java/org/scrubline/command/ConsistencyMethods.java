package org.scrubline.command;

import static org.scrubline.command.StatisticResult.inKey;

import java.util.Map;
import java.util.OptionalDouble;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.reliability.CronbachAlpha;
import org.scrubline.scoring.reliability.DecisionConsistency;
import org.scrubline.scoring.reliability.IntraclassCorrelation;
import org.scrubline.scoring.reliability.SpearmanBrown;

/** Intraclass correlations and internal consistency. */
final class ConsistencyMethods {
    private static final String NO_VARIANCE = "is undefined because there is no variance to divide";

    private ConsistencyMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("icc", ConsistencyMethods::intraclass);
        methods.put("alpha", ConsistencyMethods::alpha);
        methods.put("spearman_brown", ConsistencyMethods::spearmanBrown);
    }

    private static void intraclass(StatisticData data, StatisticResult result) {
        IntraclassCorrelation icc = IntraclassCorrelation.of(data.matrix("ratings"), data.confidence());
        result.put("BMS", icc.betweenSubjects());
        result.put("WMS", icc.withinSubjects());
        result.put("JMS", icc.betweenRaters());
        result.put("EMS", icc.residual());
        result.put("F1", icc.oneWayF(), NO_VARIANCE);
        result.put("F3", icc.twoWayF(), NO_VARIANCE);
        put(result, "ICC1", icc.oneWaySingle());
        put(result, "ICC2", icc.randomRatersSingle());
        put(result, "ICC3", icc.fixedRatersSingle());
        put(result, "ICC1k", icc.oneWayMean());
        put(result, "ICC2k", icc.randomRatersMean());
        put(result, "ICC3k", icc.fixedRatersMean());
        result.put("SEM.single.ICC2", icc.standardErrorOfMeasurement());
    }

    private static void put(StatisticResult result, String key, IntraclassCorrelation.Form form) {
        result.put(key, form.value(), NO_VARIANCE);
        result.put(key + ".lower", key + ".upper", form.interval(), "are undefined because an F ratio does not exist");
    }

    private static void alpha(StatisticData data, StatisticResult result) {
        double[][] items = data.matrix("items");
        CronbachAlpha test = CronbachAlpha.of(items);
        String constant = "is undefined because an item does not vary";
        result.put("alpha", test.alpha(), NO_VARIANCE);
        result.put("alpha.standardised", test.standardised(), constant);
        result.put("mean.r", test.meanCorrelation(), constant);
        result.put("total.mean", test.totalMean());
        result.put("total.var", test.totalVariance());
        result.put("SEM.total", test.standardErrorOfMeasurement(), NO_VARIANCE);
        for (int i = 0; i < test.items(); i++) {
            result.put("alpha.without." + (i + 1), test.alphaWithout(i), NO_VARIANCE);
            result.put("item.rest.r." + (i + 1), test.itemRestCorrelation(i), NO_VARIANCE);
        }
        decisions(data, items, test, result);
    }

    private static void decisions(StatisticData data, double[][] items, CronbachAlpha test, StatisticResult result) {
        if (data.flag("kr21")) {
            result.put("KR21", test.kr21(), NO_VARIANCE);
        }
        for (int cut : data.wholesOrNone("huynh_cuts")) {
            put(result, "huynh", cut, DecisionConsistency.huynh(items, cut));
            put(result, "subkoviak", cut, DecisionConsistency.subkoviak(items, cut));
        }
    }

    private static void put(StatisticResult result, String name, int cut, DecisionConsistency consistency) {
        result.put(name + ".p.cut" + cut, consistency.agreement());
        result.put(name + ".kappa.cut" + cut, consistency.kappa(), "is undefined because everybody is on one side");
    }

    private static void spearmanBrown(StatisticData data, StatisticResult result) {
        int i = 0;
        for (StatisticData one : Require.notEmpty("The list of cases", data.cases("cases"))) {
            i++;
            double r = one.number("r");
            if (one.has("target")) {
                result.put(i + ".k.needed", SpearmanBrown.factorNeeded(r, one.number("target")));
            } else {
                OptionalDouble projected = SpearmanBrown.projected(r, one.number("k"));
                result.put(i + ".projected", projected, "is undefined for r = " + inKey(r));
            }
        }
    }
}
