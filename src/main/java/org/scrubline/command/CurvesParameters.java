package org.scrubline.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.scrubline.scoring.curve.Psi;
import org.scrubline.scoring.curve.PsiPriors;
import tools.jackson.databind.JsonNode;

/** The parameters and priors of a configuration file. */
final class CurvesParameters {

    private static final Set<String> PSI = Set.of(
            "tau", "beta", "gamma", "mu_g", "phi", "s_a", "s_g", "s_d", "s_u", "s_l", "s_n", "q", "qg", "rho", "halo");
    private static final Set<String> PRIORS = Set.of(
            "tau", "beta", "gamma", "mu_g", "phi", "ls_a", "ls_g", "ls_d", "ls_u", "ls_l", "ls_n", "lq", "lqg", "rho",
            "hal");

    private final JsonNode root;
    private final int levels;

    CurvesParameters(JsonNode root, int levels) {
        this.root = root;
        this.levels = levels;
        CurvesConfig.known(root.path("psi"), PSI, "parameter in psi");
    }

    PsiPriors priors() {
        JsonNode priors = root.path("priors");
        if (!priors.isObject()) {
            String name = priors.asString("default");
            return switch (name) {
                case "default" -> PsiPriors.defaults(levels);
                case "none" -> PsiPriors.none();
                default -> throw new CurvesProblem("priors must be \"default\", \"none\" or an object");
            };
        }
        CurvesConfig.known(priors, PRIORS, "prior");
        Map<String, PsiPriors.Normal> given = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> prior : priors.properties()) {
            JsonNode pair = prior.getValue();
            if (pair.size() != 2) {
                throw new CurvesProblem("prior " + prior.getKey() + " needs [mean, sd]");
            }
            List<Double> means = numbers(pair.path(0), "prior " + prior.getKey());
            List<Double> sds = numbers(pair.path(1), "prior " + prior.getKey());
            given.put(prior.getKey(), new PsiPriors.Normal(means, sds));
        }
        return new PsiPriors(given);
    }

    /**
     * Parameters to keep or to start from; what the file leaves out is as shipped.
     *
     * @param order step codes in the order of the file's beta
     * @param table step codes in the order of the table
     * @param covariates number of complexity covariates
     */
    Psi psi(List<String> order, List<String> table, int covariates) {
        JsonNode psi = root.path("psi");
        Psi shipped = Psi.shipped(levels, table.size(), covariates);
        List<Double> beta = list(psi, "beta", order.size(), shipped.difficulty());
        return new Psi(
                list(psi, "tau", levels - 1, shipped.thresholds()),
                table.stream().map(code -> beta.get(order.indexOf(code))).toList(),
                list(psi, "gamma", covariates, shipped.complexity()),
                number(psi, "mu_g", shipped.gain()),
                number(psi, "phi", shipped.gapLoss()),
                number(psi, "s_a", shipped.levelSd()),
                number(psi, "s_g", shipped.gainSd()),
                number(psi, "s_d", shipped.stepSd()),
                number(psi, "s_u", shipped.assessmentSd()),
                number(psi, "s_l", shipped.severitySd()),
                number(psi, "s_n", shipped.pairSd()),
                number(psi, "q", shipped.walk()),
                number(psi, "qg", shipped.gapWalk()),
                psi.has("rho") ? numbers(psi.path("rho"), "rho") : List.of(),
                psi.has("halo") ? numbers(psi.path("halo"), "halo") : List.of());
    }

    private static List<Double> list(JsonNode psi, String key, int count, List<Double> otherwise) {
        if (!psi.has(key)) {
            return otherwise;
        }
        List<Double> values = numbers(psi.path(key), key);
        if (values.size() != count) {
            throw new CurvesProblem("psi." + key + " has " + values.size() + " numbers, but " + count + " are needed");
        }
        return values;
    }

    static double number(JsonNode object, String key, double otherwise) {
        JsonNode node = object.path(key);
        return node.isMissingNode() ? otherwise : finite(node, key);
    }

    private static double finite(JsonNode node, String what) {
        if (!node.isNumber() || !Double.isFinite(node.asDouble())) {
            throw new CurvesProblem(what + " must be a number, but is " + node);
        }
        return node.asDouble();
    }

    private static List<Double> numbers(JsonNode node, String what) {
        List<Double> values = new ArrayList<>();
        if (node.isNumber()) {
            values.add(finite(node, what));
        }
        node.forEach(item -> values.add(finite(item, what)));
        return values;
    }
}
