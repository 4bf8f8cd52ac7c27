package org.scrubline.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.ordinal.CumulativeLogitFit;
import org.scrubline.scoring.ordinal.Estimate;
import org.scrubline.scoring.ordinal.ManyFacetRasch;
import org.scrubline.scoring.ordinal.MixedCumulativeLogit;
import org.scrubline.scoring.ordinal.OrdinalData;

/** Models of ordered categories. */
final class OrdinalMethods {
    private static final int NODES = 241;

    private OrdinalMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("clm", OrdinalMethods::cumulativeLogit);
        methods.put("clmm", OrdinalMethods::mixedCumulativeLogit);
        methods.put("mfrm", OrdinalMethods::manyFacetRasch);
    }

    private static OrdinalData responses(StatisticData data) {
        double[] y = data.numbers("y");
        double[][] covariates = data.has("X") ? data.matrix("X") : new double[y.length][0];
        return new OrdinalData(y, covariates, data.labels("names", List.of()));
    }

    private static void cumulativeLogit(StatisticData data, StatisticResult result) {
        OrdinalData responses = responses(data);
        CumulativeLogitFit fit = data.has("weight")
                ? CumulativeLogitFit.of(responses, data.numbers("weight"))
                : CumulativeLogitFit.of(responses);
        result.put("logLik", fit.logLikelihood());
        put(result, "", fit.thresholds(), fit.coefficients());
    }

    private static void put(
            StatisticResult result, String prefix, List<Estimate> thresholds, Map<String, Estimate> coefficients) {
        for (int j = 0; j < thresholds.size(); j++) {
            put(result, prefix + "theta" + (j + 1), thresholds.get(j));
        }
        coefficients.forEach((name, estimate) -> put(result, prefix + "beta." + name, estimate));
    }

    private static void put(StatisticResult result, String key, Estimate estimate) {
        result.put(key, estimate.value());
        result.put(key + ".se", estimate.standardError());
    }

    private static void mixedCumulativeLogit(StatisticData data, StatisticResult result) {
        OrdinalData responses = responses(data);
        StatisticData quadrature = data.object("quadrature");
        Require.notEmpty("\"quadrature\"", quadrature.keys());
        for (String name : quadrature.keys()) {
            MixedCumulativeLogit fit = MixedCumulativeLogit.of(responses, data.labels("group"), quadrature.whole(name));
            result.put(name + ".logLik", fit.logLikelihood());
            result.put(name + ".var.group", fit.groupVariance());
            put(result, name + ".", fit.thresholds(), fit.coefficients());
        }
    }

    private static void manyFacetRasch(StatisticData data, StatisticResult result) {
        ManyFacetRasch fit = ManyFacetRasch.of(ratings(data), data.whole("nodes", NODES));
        result.put("deviance", fit.deviance());
        result.put("var.person", fit.abilityVariance());
        fit.items().forEach((item, difficulty) -> result.put("item." + item, difficulty));
        fit.raters().forEach((rater, severity) -> result.put("rater." + rater, severity));
        for (int k = 0; k < fit.steps().size(); k++) {
            result.put("step." + (k + 1), fit.steps().get(k));
        }
        if (fit.nodes() != data.whole("nodes", NODES)) {
            result.note("the grid was refined to " + fit.nodes() + " nodes");
        }
    }

    private static List<ManyFacetRasch.Rating> ratings(StatisticData data) {
        List<String> persons = data.labels("person");
        List<String> raters = data.labels("rater");
        Require.sameLength("\"person\"", persons.size(), "\"rater\"", raters.size());
        StatisticData scores = data.object("scores");
        List<ManyFacetRasch.Rating> ratings = new ArrayList<>();
        for (String item : data.labels("items", scores.keys())) {
            List<@Nullable Integer> column = scores.wholesWithGaps(item);
            Require.sameLength("\"person\"", persons.size(), "the scores of " + item, column.size());
            for (int i = 0; i < persons.size(); i++) {
                Integer score = column.get(i);
                if (score != null) {
                    ratings.add(new ManyFacetRasch.Rating(persons.get(i), raters.get(i), item, score));
                }
            }
        }
        return ratings;
    }
}
