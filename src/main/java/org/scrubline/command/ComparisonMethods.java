package org.scrubline.command;

import static org.scrubline.command.StatisticResult.inKey;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Distributions;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.estimate.FalseDiscovery;
import org.scrubline.scoring.estimate.LogRank;
import org.scrubline.scoring.estimate.MantelHaenszel;
import org.scrubline.scoring.estimate.SurvivalCurve;

/** Time to an event, flags over many tests, comparison within strata. */
final class ComparisonMethods {
    private ComparisonMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("km", ComparisonMethods::survival);
        methods.put("bh", ComparisonMethods::falseDiscovery);
        methods.put("mantel_haenszel", ComparisonMethods::strata);
    }

    /** Without groups everybody is in one named "all". */
    private static void survival(StatisticData data, StatisticResult result) {
        double[] times = data.numbers("time");
        boolean[] events = data.marks("event");
        List<String> groups = data.labels("group", Collections.nCopies(times.length, "all"));
        Require.that(times.length > 0, "\"time\" is empty.");
        Require.sameLength("\"time\"", times.length, "\"event\"", events.length);
        Require.sameLength("\"time\"", times.length, "\"group\"", groups.size());
        new TreeSet<>(groups).forEach(group -> put(result, group, curve(times, events, groups, group)));
        if (groups.stream().distinct().count() > 1) {
            put(result, LogRank.of(times, events, groups));
        }
    }

    private static SurvivalCurve curve(double[] times, boolean[] events, List<String> groups, String group) {
        int[] members = IntStream.range(0, times.length)
                .filter(i -> groups.get(i).equals(group))
                .toArray();
        boolean[] own = new boolean[members.length];
        for (int k = 0; k < own.length; k++) {
            own[k] = events[members[k]];
        }
        return SurvivalCurve.of(
                Arrays.stream(members).mapToDouble(i -> times[i]).toArray(), own);
    }

    private static void put(StatisticResult result, String group, SurvivalCurve curve) {
        result.put(group + ".median", curve.median(), "is not reached");
        for (SurvivalCurve.Step step : curve.steps()) {
            String time = inKey(step.time());
            result.put(group + ".S." + time, step.survival());
            result.put(group + ".se." + time, step.standardError(), "is undefined because nobody is left");
        }
    }

    private static void put(StatisticResult result, LogRank test) {
        String why = "is undefined because the groups are never at risk together when an event occurs";
        result.put("logrank.chisq", test.chiSquared(), why);
        result.put("logrank.df", test.degrees());
        result.put("logrank.p", test.p(), why);
        test.groups().forEach((group, events) -> {
            result.put(group + ".observed", events.observed());
            result.put(group + ".expected", events.expected());
        });
    }

    private static void falseDiscovery(StatisticData data, StatisticResult result) {
        double[] p = data.numbers("p");
        double q = data.number("q", 0.05);
        FalseDiscovery adjusted = FalseDiscovery.of(p);
        for (int i = 0; i < p.length; i++) {
            result.put("adj." + (i + 1), adjusted.adjusted().get(i));
        }
        result.put("n.rejected.BH", adjusted.flagged(q));
        result.put("n.rejected.bonferroni", FalseDiscovery.flaggedByBonferroni(q, p));
    }

    private static void strata(StatisticData data, StatisticResult result) {
        MantelHaenszel test = MantelHaenszel.of(data.matrices("strata"));
        String empty = "is undefined because a margin is 0 in every stratum";
        result.put("common.OR", test.commonRatio(), "is undefined because its denominator is 0");
        result.put("ci.low", "ci.high", test.interval(data.confidence()), "are undefined with the common odds ratio");
        result.put("chisq.corrected", test.chiSquared(true), empty);
        result.put("chisq.uncorrected", test.chiSquared(false), empty);
        result.put("p.corrected", upper(test.chiSquared(true), 1), empty);
        result.put("p.uncorrected", upper(test.chiSquared(false), 1), empty);
        result.put("crude.OR", test.crudeRatio(), "is undefined because its denominator is 0");
        String single = "is undefined for a single stratum";
        result.put("woolf.chisq", test.woolf(), single);
        result.put("woolf.df", test.woolfDegrees());
        result.put("woolf.p", upper(test.woolf(), test.woolfDegrees()), single);
    }

    private static OptionalDouble upper(OptionalDouble chiSquared, int degrees) {
        return chiSquared.isEmpty()
                ? chiSquared
                : OptionalDouble.of(Distributions.chiSquaredUpper(chiSquared.getAsDouble(), degrees));
    }
}
