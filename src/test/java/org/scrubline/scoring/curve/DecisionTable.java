package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** What each rule of decision gets wrong and how long it takes, on the same trainees. */
final class DecisionTable {

    /** A declaration is false when the true chance lies this much below the wanted one. */
    private static final double MARGIN = 0.1;

    private static final int LATEST_READY = 50;
    private static final double STRICT = 0.25;
    private static final int RESAMPLES = 200;

    private final List<TraineeHistory> trainees;

    DecisionTable(List<TraineeHistory> trainees) {
        this.trainees = List.copyOf(trainees);
    }

    /**
     * Shares from 0 to 1.
     *
     * @param falseReady of all trainees, those declared while the true chance was below the wanted one less .10
     * @param missed of those truly ready by case 50, those not declared by case 70
     * @param delay median cases from truly ready to declared, of those both
     * @param missedStrict of those truly ready who were scored by strict supervisors, those missed
     */
    record Row(double falseReady, double missed, double delay, double missedStrict) {}

    Row row(DecisionRules.Rule rule) {
        return row(outcomes(rule));
    }

    private record Outcome(
            int programme, boolean falseReady, boolean ready, boolean declared, int delay, boolean strict) {}

    private List<Outcome> outcomes(DecisionRules.Rule rule) {
        return trainees.stream()
                .map(t -> outcome(t, rule.declares().applyAsInt(t)))
                .toList();
    }

    private static Outcome outcome(TraineeHistory trainee, int declared) {
        int ready = trainee.readyAfter(DecisionSimulation.WANTED, LATEST_READY);
        boolean wrong = declared > 0 && trainee.truth().get(declared - 1) < DecisionSimulation.WANTED - MARGIN;
        return new Outcome(
                trainee.programme(), wrong, ready > 0, declared > 0, declared - ready, trainee.strictness() >= STRICT);
    }

    private static Row row(List<Outcome> outcomes) {
        List<Outcome> ready = outcomes.stream().filter(Outcome::ready).toList();
        List<Outcome> strict = ready.stream().filter(Outcome::strict).toList();
        int[] delays = ready.stream()
                .filter(Outcome::declared)
                .mapToInt(Outcome::delay)
                .sorted()
                .toArray();
        return new Row(
                share(outcomes, Outcome::falseReady),
                share(ready, o -> !o.declared()),
                delays.length == 0 ? Double.NaN : delays[delays.length / 2],
                share(strict, o -> !o.declared()));
    }

    private static double share(List<Outcome> outcomes, Predicate<Outcome> which) {
        return outcomes.isEmpty() ? 0 : (double) outcomes.stream().filter(which).count() / outcomes.size();
    }

    /** The rule of a family that misses fewest among those at most so often false; earliest of equals. */
    Optional<DecisionRules.Rule> best(List<DecisionRules.Rule> family, double falseReady) {
        return family.stream()
                .filter(rule -> row(rule).falseReady() <= falseReady)
                .min(Comparator.comparingDouble(
                                (DecisionRules.Rule rule) -> row(rule).missed())
                        .thenComparingDouble(rule -> row(rule).delay()));
    }

    String header() {
        Row never = row(new DecisionRules.Rule("never", t -> 0));
        List<Outcome> outcomes = outcomes(DecisionRules.count(1));
        return String.format(
                Locale.ROOT,
                "%d trainees, %.0f %% truly ready by case %d, %d of these scored by strict supervisors; all missed: %.0f %%%n"
                        + "rule | false %% (se) | missed %% (se) | median delay (se) | missed, strict scorers %% (se)%n",
                trainees.size(),
                100 * share(outcomes, Outcome::ready),
                LATEST_READY,
                outcomes.stream().filter(o -> o.ready() && o.strict()).count(),
                100 * never.missed());
    }

    /** One line, with standard errors by drawing programmes again. */
    String line(DecisionRules.Rule rule) {
        List<Outcome> outcomes = outcomes(rule);
        Row row = row(outcomes);
        List<Row> again = resampled(outcomes);
        return String.format(
                Locale.ROOT,
                "%s | %.1f (%.1f) | %.1f (%.1f) | %.0f (%.1f) | %.0f (%.0f)%n",
                rule.name(),
                100 * row.falseReady(),
                100 * sd(again, Row::falseReady),
                100 * row.missed(),
                100 * sd(again, Row::missed),
                row.delay(),
                sd(again, Row::delay),
                100 * row.missedStrict(),
                100 * sd(again, Row::missedStrict));
    }

    private static List<Row> resampled(List<Outcome> outcomes) {
        Map<Integer, List<Outcome>> programmes =
                outcomes.stream().collect(Collectors.groupingBy(Outcome::programme, TreeMap::new, Collectors.toList()));
        List<List<Outcome>> each = List.copyOf(programmes.values());
        Random random = new Random(1);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < RESAMPLES; i++) {
            List<Outcome> drawn = new ArrayList<>();
            for (int p = 0; p < each.size(); p++) {
                drawn.addAll(each.get(random.nextInt(each.size())));
            }
            rows.add(row(drawn));
        }
        return rows;
    }

    private static double sd(List<Row> rows, ToDoubleFunction<Row> value) {
        double[] values =
                rows.stream().mapToDouble(value).filter(Double::isFinite).toArray();
        double mean = Arrays.stream(values).average().orElse(0);
        double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
        return Math.sqrt(squares / Math.max(values.length - 1, 1));
    }
}
