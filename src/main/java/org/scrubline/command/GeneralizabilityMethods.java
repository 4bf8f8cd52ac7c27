package org.scrubline.command;

import static org.scrubline.command.StatisticResult.inKey;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.scrubline.command.StatisticCommand.Method;
import org.scrubline.scoring.Require;
import org.scrubline.scoring.mixed.CrossedEffects;
import org.scrubline.scoring.reliability.ItemsWithinPersons;
import org.scrubline.scoring.reliability.PersonsByItems;
import org.scrubline.scoring.reliability.PersonsByItemsByOccasions;
import org.scrubline.scoring.reliability.Projection;
import org.scrubline.scoring.reliability.RatersWithinTasks;

/** Generalizability studies with their decision studies. */
final class GeneralizabilityMethods {
    private static final String NO_VARIANCE = "is undefined because there is no variance to divide";

    private GeneralizabilityMethods() {}

    static void addTo(Map<String, Method> methods) {
        methods.put("g_pxi", GeneralizabilityMethods::personsByItems);
        methods.put("g_inp", GeneralizabilityMethods::itemsWithinPersons);
        methods.put("g_pxixo", GeneralizabilityMethods::personsByItemsByOccasions);
        methods.put("g_pxrnt", GeneralizabilityMethods::ratersWithinTasks);
        methods.put("lmm_crossed", GeneralizabilityMethods::crossedEffects);
    }

    private static void put(StatisticResult result, String name, Projection projection) {
        result.put(name + ".rel.error.var", projection.relativeError());
        result.put(name + ".abs.error.var", projection.absoluteError());
        result.put(name + ".Erho2", projection.generalizability(), NO_VARIANCE);
        result.put(name + ".Phi", projection.dependability(), NO_VARIANCE);
    }

    private static Set<Integer> ownAndPlanned(int own, int[] planned) {
        Set<Integer> numbers = new LinkedHashSet<>(List.of(own));
        IntStream.of(planned).forEach(numbers::add);
        return numbers;
    }

    private static void personsByItems(StatisticData data, StatisticResult result) {
        PersonsByItems study = PersonsByItems.of(data.matrix("scores"));
        result.put("MS.p", study.personMeanSquare());
        result.put("MS.i", study.itemMeanSquare());
        result.put("MS.pi", study.residualMeanSquare());
        result.put("var.p", study.personVariance());
        result.put("var.i", study.itemVariance());
        result.put("var.pi", study.residualVariance());
        for (int n : ownAndPlanned(study.items(), data.wholesOrNone("D_items"))) {
            put(result, "n" + n, study.projected(n));
        }
        result.put("grand.mean", study.mean());
        for (double cut : data.numbersOrNone("phi_lambda_cuts")) {
            result.put("phi.lambda." + inKey(cut), study.phiLambda(cut), NO_VARIANCE);
        }
    }

    private static void itemsWithinPersons(StatisticData data, StatisticResult result) {
        ItemsWithinPersons study = ItemsWithinPersons.of(data.matrix("scores"));
        result.put("MS.p", study.personMeanSquare());
        result.put("MS.i:p", study.itemMeanSquare());
        result.put("var.p", study.personVariance());
        result.put("var.i:p", study.itemVariance());
        for (int n : ownAndPlanned(study.items(), data.wholesOrNone("D_items"))) {
            put(result, "n" + n, study.projected(n));
        }
    }

    private static void personsByItemsByOccasions(StatisticData data, StatisticResult result) {
        PersonsByItemsByOccasions study =
                PersonsByItemsByOccasions.of(data.matrices("scores").toArray(double[][][]::new));
        put(result, "MS.", study.meanSquares());
        put(result, "var.", study.variances());
        for (int[] d : pairs(data, study.items(), study.occasions())) {
            String name = "ni" + d[0] + ".no" + d[1];
            put(result, name, study.projected(d[0], d[1]));
            put(result, name + ".I.fixed", study.projectedWithItemsFixed(d[0], d[1]));
        }
    }

    private static void put(StatisticResult result, String name, PersonsByItemsByOccasions.Effects effects) {
        result.put(name + "p", effects.p());
        result.put(name + "i", effects.i());
        result.put(name + "o", effects.o());
        result.put(name + "pi", effects.pi());
        result.put(name + "po", effects.po());
        result.put(name + "io", effects.io());
        result.put(name + "pio", effects.pio());
    }

    private static List<int[]> pairs(StatisticData data, int first, int second) {
        List<int[]> pairs = new java.util.ArrayList<>(List.of(new int[] {first, second}));
        if (data.has("D")) {
            for (int[] pair : data.wholeRows("D")) {
                Require.that(pair.length == 2, "Every line of \"D\" must hold two numbers.");
                pairs.add(pair);
            }
        }
        return pairs;
    }

    private static void ratersWithinTasks(StatisticData data, StatisticResult result) {
        List<String> groups = data.labels("column_group");
        List<String> names = groups.stream().distinct().toList();
        RatersWithinTasks study = RatersWithinTasks.of(
                data.matrix("scores"), groups.stream().mapToInt(names::indexOf).toArray());
        result.put("T.mu", study.meanTerm());
        put(result, "T.", study.terms());
        put(result, "MS.", study.meanSquares());
        put(result, "var.", study.variances());
        put(result, "same", study.projected(study.tasks(), study.raters()));
        put(result, "same.h.fixed", study.projectedWithTasksFixed(study.tasks(), study.raters()));
        for (int[] d : pairs(data, study.tasks(), study.raters())) {
            String name = "nh" + d[0] + ".ni" + d[1];
            put(result, name, study.projected(d[0], d[1]));
        }
    }

    private static void put(StatisticResult result, String name, RatersWithinTasks.Effects effects) {
        result.put(name + "p", effects.p());
        result.put(name + "h", effects.h());
        result.put(name + "i:h", effects.ih());
        result.put(name + "ph", effects.ph());
        result.put(name + "pi:h", effects.pih());
    }

    private static void crossedEffects(StatisticData data, StatisticResult result) {
        StatisticData columns = data.object("columns");
        Map<String, List<String>> facets = new LinkedHashMap<>();
        columns.keys().forEach(facet -> facets.put(facet, columns.labels(facet)));
        CrossedEffects fit = CrossedEffects.of(data.numbers("y"), facets, data.labelRows("factors"));
        fit.variances().forEach((term, variance) -> result.put("var." + CrossedEffects.name(term), variance));
        result.put("var.residual", fit.residual());
        result.put("intercept", fit.intercept());
        result.put("intercept.se", fit.interceptError());
        result.put("REML.criterion", fit.criterion());
        if (data.has("D")) {
            for (StatisticData study : data.cases("D")) {
                Map<String, Integer> numbers = study.wholesByKey();
                String name = numbers.entrySet().stream()
                        .map(entry -> entry.getKey() + entry.getValue())
                        .collect(Collectors.joining("_"));
                put(result, "D." + name, fit.projected(data.text("g_object"), data.labels("residual_facets"), numbers));
            }
        }
    }
}
