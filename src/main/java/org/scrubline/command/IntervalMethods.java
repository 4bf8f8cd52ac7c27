package org.scrubline.command;

import static org.scrubline.command.StatisticResult.inKey;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.estimate.FunnelDispersion;
import org.scrubline.scoring.estimate.FunnelLimits;
import org.scrubline.scoring.estimate.Interval;
import org.scrubline.scoring.estimate.PoissonInterval;
import org.scrubline.scoring.estimate.ProportionDifference;
import org.scrubline.scoring.estimate.ProportionInterval;
import tools.jackson.databind.JsonNode;

/** Intervals of proportions and counts, funnel limits. */
final class IntervalMethods {
    private IntervalMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("prop_ci", IntervalMethods::proportions);
        methods.put("prop_diff", IntervalMethods::differences);
        methods.put("poisson_ci", IntervalMethods::counts);
        methods.put("funnel", IntervalMethods::funnel);
    }

    private static int[][] rows(StatisticData data, String key, int size) {
        int[][] rows = data.wholeRows(key);
        Require.that(rows.length > 0, "\"%s\" is empty.", key);
        for (int[] row : rows) {
            Require.that(row.length == size, "Every element of \"%s\" must hold %s numbers.", key, size);
        }
        return rows;
    }

    private static void put(StatisticResult result, String key, Interval interval) {
        result.put(key + ".lo", key + ".hi", interval);
    }

    private static void proportions(StatisticData data, StatisticResult result) {
        double level = data.confidence();
        for (int[] one : rows(data, "cases", 2)) {
            int x = one[0];
            int n = one[1];
            String name = x + "/" + n + ".";
            put(result, name + "wald", ProportionInterval.wald(x, n, level));
            put(result, name + "wilson", ProportionInterval.wilson(x, n, level));
            put(result, name + "wilsoncc", ProportionInterval.wilsonContinuityCorrected(x, n, level));
            put(result, name + "clopper", ProportionInterval.clopperPearson(x, n, level));
            put(result, name + "jeffreys", ProportionInterval.jeffreys(x, n, level));
            put(result, name + "midp", ProportionInterval.midP(x, n, level));
            put(result, name + "agresticoull", ProportionInterval.agrestiCoull(x, n, level));
        }
    }

    private static void differences(StatisticData data, StatisticResult result) {
        double level = data.confidence();
        for (int[] c : rows(data, "cases", 4)) {
            String name = c[0] + "/" + c[1] + "-" + c[2] + "/" + c[3] + ".";
            put(result, name + "newcombe", ProportionDifference.newcombe(c[0], c[1], c[2], c[3], level));
            put(result, name + "wald", ProportionDifference.wald(c[0], c[1], c[2], c[3], level));
        }
    }

    /** Keys quote the case as it is written in the file and, when that differs, in the shortest form. */
    private static void counts(StatisticData data, StatisticResult result) {
        double level = data.confidence();
        for (List<JsonNode> one : Require.notEmpty("\"cases\"", data.rawRows("cases"))) {
            Require.that(one.size() == 2, "Every element of \"cases\" must hold an observed and an expected count.");
            int observed = JsonValues.whole("An observed count", one.get(0));
            double expected = JsonValues.number("An expected count", one.get(1));
            Require.positive("An expected count", expected);
            Interval exact = PoissonInterval.exact(observed, level);
            Set<String> names = new LinkedHashSet<>();
            names.add(one.get(0).asString() + "/" + one.get(1).asString());
            names.add(observed + "/" + inKey(expected));
            for (String name : names) {
                put(result, name + ".exact", exact);
                result.put(name + ".SMR", observed / expected);
                put(result, name + ".SMR", new Interval(exact.low() / expected, exact.high() / expected));
                put(result, name + ".byar", PoissonInterval.byar(observed, level));
            }
        }
    }

    private static void funnel(StatisticData data, StatisticResult result) {
        FunnelLimits limits = new FunnelLimits(data.number("target"));
        for (int n : data.wholesOrNone("n")) {
            for (double tail : data.numbers("tail_p")) {
                String place = ".n" + n + ".p" + inKey(tail);
                result.put("normal" + place, limits.normal(n, tail));
                result.put("exact" + place, limits.exact(n, tail));
                result.put("quantile" + place, limits.quantile(n, tail));
            }
        }
        if (data.has("units")) {
            int[][] units = rows(data, "units", 2);
            double[] z = new double[units.length];
            for (int i = 0; i < z.length; i++) {
                z[i] = limits.zScore(units[i][0], units[i][1]);
                result.put("z." + (i + 1), z[i]);
            }
            result.put("phi.raw", FunnelDispersion.raw(z));
            result.put("phi.winsorised", FunnelDispersion.winsorised(data.number("winsor", 0.1), z));
        }
        Require.that(data.has("n") || data.has("units"), "The data have neither \"n\" nor \"units\".");
    }
}
