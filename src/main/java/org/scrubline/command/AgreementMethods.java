package org.scrubline.command;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.reliability.FleissKappa;
import org.scrubline.scoring.reliability.KappaTable;
import org.scrubline.scoring.reliability.KendallConcordance;
import org.scrubline.scoring.reliability.KrippendorffAlpha;
import org.scrubline.scoring.reliability.Weights;

/** Agreement between raters. */
final class AgreementMethods {
    private static final String ONE_CATEGORY = "is undefined because only one category was used";

    private AgreementMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("kappa_table", AgreementMethods::kappaTable);
        methods.put("fleiss", AgreementMethods::fleiss);
        methods.put("kripp", AgreementMethods::krippendorff);
        methods.put("kendall_w", AgreementMethods::kendall);
    }

    private static void kappaTable(StatisticData data, StatisticResult result) {
        double[][] table = data.matrix("table");
        double total = Arrays.stream(table).flatMapToDouble(Arrays::stream).sum();
        Require.that(data.has("n") || total > 1.5, "A table of proportions needs the number of subjects, \"n\".");
        KappaTable kappas = new KappaTable(table, data.number("n", total));
        for (String name : data.labels("weights", defaultWeights(data))) {
            put(result, name, kappas.kappa(weights(name, data)));
        }
        if (data.has("agreement_weights") && !data.labels("weights", List.of()).contains("custom")) {
            put(result, "custom", kappas.kappa(Weights.agreement(data.matrix("agreement_weights"))));
        }
        if (data.flag("gwet")) {
            result.put("scott.pi", kappas.scottPi(), ONE_CATEGORY);
            result.put("gwet.AC1", kappas.gwetAc1(), ONE_CATEGORY);
            result.put("brennan.prediger", kappas.brennanPrediger(), ONE_CATEGORY);
            result.put("krippendorff.nominal", kappas.krippendorffNominal(), ONE_CATEGORY);
        }
    }

    private static List<String> defaultWeights(StatisticData data) {
        return data.has("agreement_weights") ? List.of() : List.of("unweighted", "linear", "quadratic");
    }

    private static Weights weights(String name, StatisticData data) {
        return switch (name) {
            case "unweighted" -> Weights.UNWEIGHTED;
            case "linear" -> Weights.LINEAR;
            case "quadratic" -> Weights.QUADRATIC;
            case "custom" ->
                data.has("agreement_weights")
                        ? Weights.agreement(data.matrix("agreement_weights"))
                        : Weights.disagreement(data.matrix("disagreement_weights"));
            case "custom2" -> Weights.disagreement(data.matrix("disagreement_weights_2"));
            default -> throw new IllegalArgumentException("There are no weights named " + name + ".");
        };
    }

    private static void put(StatisticResult result, String name, KappaTable.Kappa kappa) {
        result.put(name + ".kappa", kappa.kappa(), ONE_CATEGORY);
        result.put(name + ".se", kappa.standardError(), ONE_CATEGORY);
        result.put(name + ".po", kappa.observed());
        result.put(name + ".pe", kappa.chance());
        result.put(name + ".se0", kappa.nullError(), ONE_CATEGORY);
    }

    private static FleissKappa fleissOf(StatisticData data) {
        if (!data.has("counts")) {
            return FleissKappa.ofRatings(data.labelRows("ratings"));
        }
        int[][] counts = data.wholeRows("counts");
        Require.that(counts.length > 0, "\"counts\" is empty.");
        List<String> numbers = IntStream.rangeClosed(1, counts[0].length)
                .mapToObj(Integer::toString)
                .toList();
        return FleissKappa.ofCounts(counts, data.labels("categories", numbers));
    }

    private static void fleiss(StatisticData data, StatisticResult result) {
        FleissKappa fleiss = fleissOf(data);
        result.put("P.bar", fleiss.observed());
        result.put("P.e", fleiss.chance());
        result.put("kappa", fleiss.kappa(), ONE_CATEGORY);
        result.put("se0", fleiss.nullError(), ONE_CATEGORY);
        result.put("z", fleiss.z(), ONE_CATEGORY);
        for (FleissKappa.Category category : fleiss.categories()) {
            String name = "category" + category.label();
            String why = "is undefined because all or none of the ratings are in this category";
            result.put(name + ".kappa", category.kappa(), why);
            result.put(name + ".z", category.z(), why);
            result.put(name + ".p", category.share());
        }
        result.put(
                "conger.exact",
                fleiss.conger(),
                data.has("counts") ? "is undefined because counts do not say who rated" : ONE_CATEGORY);
    }

    private static void krippendorff(StatisticData data, StatisticResult result) {
        KrippendorffAlpha alpha = new KrippendorffAlpha(data.rowsWithGaps("ratings_by_rater"));
        result.put("pairable.values", alpha.pairableValues());
        for (String metric : data.labels("metrics", List.of("nominal", "ordinal", "interval", "ratio"))) {
            result.put(
                    "alpha." + metric.toLowerCase(Locale.ROOT),
                    alpha.alpha(KrippendorffAlpha.Metric.named(metric)),
                    "is undefined because all values are equal");
        }
    }

    private static void kendall(StatisticData data, StatisticResult result) {
        KendallConcordance concordance = KendallConcordance.of(data.matrix("ratings"));
        String why = "is undefined because no rater tells the subjects apart";
        result.put("Wt", concordance.w(), why);
        result.put("chisq", concordance.chiSquared(), why);
        result.put("df", concordance.degrees());
        result.put("p", concordance.p(), why);
    }
}
