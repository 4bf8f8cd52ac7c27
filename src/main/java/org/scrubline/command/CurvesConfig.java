package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.scrubline.scoring.curve.Estimation;
import org.scrubline.scoring.curve.Psi;
import org.scrubline.scoring.curve.PsiPriors;
import org.scrubline.scoring.curve.Terms;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The configuration file of {@code curves}, checked key by key. */
final class CurvesConfig {

    private static final Set<String> KEYS = Set.of(
            "K",
            "S",
            "supervisors",
            "kappa",
            "standard",
            "critical_steps",
            "steps",
            "terms",
            "supervisor_range",
            "supervisor_halo",
            "psi",
            "estimate",
            "priors");
    private static final Set<String> TERMS =
            Set.of("growth", "chain", "gap", "trainee_step", "trainee_supervisor", "assessment");
    private static final Set<String> PSI = Set.of(
            "tau", "beta", "gamma", "mu_g", "phi", "s_a", "s_g", "s_d", "s_u", "s_l", "s_n", "q", "qg", "rho", "halo");
    private static final Set<String> PRIORS = Set.of(
            "tau", "beta", "gamma", "mu_g", "phi", "ls_a", "ls_g", "ls_d", "ls_u", "ls_l", "ls_n", "lq", "lqg", "rho",
            "hal");
    private static final int MOST = 10_000;

    private final JsonNode root;

    private CurvesConfig(JsonNode root) {
        this.root = root;
        if (!root.isObject()) {
            throw new CurvesProblem("the config must be one JSON object");
        }
        known(root, KEYS, "config key");
        known(root.path("psi"), PSI, "parameter in psi");
    }

    static CurvesConfig read(Path file) {
        try {
            return new CurvesConfig(JsonMapper.shared().readTree(Files.readString(file)));
        } catch (IOException e) {
            throw new CurvesProblem("cannot read " + file + ": " + e.getMessage());
        } catch (JacksonException e) {
            throw new CurvesProblem(file + " is not valid JSON: " + e.getOriginalMessage());
        }
    }

    private static void known(JsonNode object, Set<String> names, String what) {
        for (String name : object.propertyNames()) {
            if (!names.contains(name)) {
                throw new CurvesProblem("unknown " + what + " \"" + name + "\"; known are "
                        + names.stream().sorted().toList());
            }
        }
    }

    int levels() {
        return whole("K", 5, 2, 15);
    }

    /** Number of steps, or 0 when not given. */
    int stepCount() {
        int beta = root.path("psi").path("beta").size();
        return whole("S", Math.max(beta, root.path("steps").size()), 0, MOST);
    }

    double kappa() {
        double kappa = number(root, "kappa", 20);
        if (!(kappa > 0 && kappa < 1e6)) {
            throw new CurvesProblem("kappa must be above 0, but is " + kappa);
        }
        return kappa;
    }

    int standard() {
        return whole("standard", Math.min(4, levels()), 2, levels());
    }

    List<String> criticalSteps() {
        return texts("critical_steps");
    }

    /** Step order, empty when not given. */
    List<String> steps() {
        return texts("steps");
    }

    /** Supervisors to list: by name, or 0..n-1. */
    List<String> supervisors() {
        JsonNode supervisors = root.path("supervisors");
        return supervisors.isNumber()
                ? IntStream.range(0, whole("supervisors", 0, 0, MOST))
                        .mapToObj(Integer::toString)
                        .toList()
                : texts("supervisors");
    }

    Terms terms() {
        JsonNode terms = root.path("terms");
        if (terms.isMissingNode()) {
            return Terms.FULL;
        }
        List<String> names = texts("terms");
        for (String name : names) {
            if (!TERMS.contains(name)) {
                throw new CurvesProblem("unknown term \"" + name + "\"; known are "
                        + TERMS.stream().sorted().toList());
            }
        }
        return new Terms(
                names.contains("growth"),
                names.contains("chain"),
                names.contains("gap"),
                names.contains("trainee_step"),
                names.contains("trainee_supervisor"),
                names.contains("assessment"));
    }

    boolean range() {
        return flag("supervisor_range");
    }

    boolean halo() {
        return flag("supervisor_halo");
    }

    private boolean flag(String key) {
        JsonNode node = root.path(key);
        if (!node.isMissingNode() && !node.isBoolean()) {
            throw new CurvesProblem(key + " must be true or false");
        }
        return node.asBoolean(false);
    }

    Estimation estimation() {
        String estimate = root.path("estimate").asString("fit");
        return switch (estimate) {
            case "given" -> Estimation.GIVEN;
            case "fit" -> Estimation.ALL;
            default -> throw new CurvesProblem("estimate must be \"given\" or \"fit\", but is \"" + estimate + "\"");
        };
    }

    PsiPriors priors() {
        JsonNode priors = root.path("priors");
        if (!priors.isObject()) {
            String name = priors.asString("default");
            return switch (name) {
                case "default" -> PsiPriors.defaults(levels());
                case "none" -> PsiPriors.none();
                default -> throw new CurvesProblem("priors must be \"default\", \"none\" or an object");
            };
        }
        known(priors, PRIORS, "prior");
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
        Psi shipped = Psi.shipped(levels(), table.size(), covariates);
        List<Double> beta = list(psi, "beta", order.size(), shipped.difficulty());
        return new Psi(
                list(psi, "tau", levels() - 1, shipped.thresholds()),
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

    private static double number(JsonNode object, String key, double otherwise) {
        JsonNode node = object.path(key);
        return node.isMissingNode() ? otherwise : finite(node, key);
    }

    private static double finite(JsonNode node, String what) {
        if (!node.isNumber() || !Double.isFinite(node.asDouble())) {
            throw new CurvesProblem(what + " must be a number, but is " + node);
        }
        return node.asDouble();
    }

    private int whole(String key, int otherwise, int least, int most) {
        JsonNode node = root.path(key);
        if (node.isMissingNode()) {
            return otherwise;
        }
        if (!node.isIntegralNumber() || node.asLong() < least || node.asLong() > most) {
            throw new CurvesProblem(key + " must be a whole number from " + least + " to " + most + ", but is " + node);
        }
        return node.asInt();
    }

    private static List<Double> numbers(JsonNode node, String what) {
        List<Double> values = new ArrayList<>();
        if (node.isNumber()) {
            values.add(finite(node, what));
        }
        node.forEach(item -> values.add(finite(item, what)));
        return values;
    }

    private List<String> texts(String key) {
        JsonNode node = root.path(key);
        if (!node.isMissingNode() && !node.isArray()) {
            throw new CurvesProblem(key + " must be a list");
        }
        List<String> values = new ArrayList<>();
        node.forEach(item -> values.add(item.asString("")));
        return values;
    }
}
