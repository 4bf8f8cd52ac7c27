package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.scrubline.scoring.curve.Estimation;
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
    private static final int MOST = 10_000;

    private final JsonNode root;

    private CurvesConfig(JsonNode root) {
        this.root = root;
        if (!root.isObject()) {
            throw new CurvesProblem("the config must be one JSON object");
        }
        known(root, KEYS, "config key");
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

    static void known(JsonNode object, Set<String> names, String what) {
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
        double kappa = CurvesParameters.number(root, "kappa", 20);
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

    private List<String> texts(String key) {
        JsonNode node = root.path(key);
        if (!node.isMissingNode() && !node.isArray()) {
            throw new CurvesProblem(key + " must be a list");
        }
        List<String> values = new ArrayList<>();
        node.forEach(item -> values.add(item.asString("")));
        return values;
    }

    /** Parameters and priors of the file. */
    CurvesParameters parameters() {
        return new CurvesParameters(root, levels());
    }
}
