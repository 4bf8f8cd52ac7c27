package org.scrubline.cohort.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The level of every sheet across all procedures, freed of what is not the trainee's: which steps were scored, who scored
 * and how complex the case was. An additive fit by least squares (each group of effects set to the mean of what the
 * others leave, over and over), in levels of the sheet. It reads across procedures, which the competency model does not,
 * and answers in levels; it knows nothing of thresholds, so it stands beside the model and never instead of it.
 *
 * <p>Each third of a trainee's sheets has a level of its own, so that learning is not taken for a scorer's habit.
 */
public final class AdjustedLevels {

    private static final int ROUNDS = 200;
    private static final int THIRDS = 3;

    /** One sheet: its mean level less the ease of its steps, the scorer's offset and the cost of its band. */
    public record Point(SignedForm form, double level) {}

    private final Map<String, List<Point>> byTrainee = new HashMap<>();
    private final Map<String, Double> offsets;
    private final double spread;

    private AdjustedLevels(List<Row> rows, Map<String, Double> offsets, Map<String, Double> bands) {
        this.offsets = offsets;
        double squares = 0;
        for (Row row : rows) {
            double level =
                    row.value - offsets.getOrDefault(row.form.scorer(), 0.) - bands.getOrDefault(band(row.form), 0.);
            byTrainee
                    .computeIfAbsent(row.form.trainee(), id -> new ArrayList<>())
                    .add(new Point(row.form, level));
            squares += Math.pow(level - row.third, 2);
        }
        spread = Math.sqrt(squares / Math.max(1, rows.size() - offsets.size() - THIRDS * byTrainee.size()));
    }

    /** Fits all sheets of a programme; oldest case first within each trainee of the result. */
    public static AdjustedLevels of(List<SignedForm> forms) {
        List<SignedForm> scored = forms.stream()
                .filter(form -> !form.levels().isEmpty())
                .sorted(Comparator.comparing(SignedForm::endedAt).thenComparing(SignedForm::id))
                .toList();
        List<Row> rows = rows(scored);
        Map<String, Double> offsets = Map.of();
        Map<String, Double> bands = Map.of();
        for (int round = 0; round < ROUNDS; round++) {
            Map<String, Double> scorers = offsets;
            Map<String, Double> costs = bands;
            effects(rows, row -> row.group, row -> row.without(scorers, costs))
                    .forEach((group, mean) ->
                            rows.stream().filter(row -> row.group.equals(group)).forEach(row -> row.third = mean));
            offsets = centred(effects(
                    rows,
                    row -> row.form.scorer(),
                    row -> row.value - row.third - costs.getOrDefault(band(row.form), 0.)));
            Map<String, Double> now = offsets;
            bands = centred(effects(
                    rows,
                    row -> band(row.form),
                    row -> row.value - row.third - now.getOrDefault(row.form.scorer(), 0.)));
        }
        return new AdjustedLevels(rows, offsets, bands);
    }

    private static String band(SignedForm form) {
        return form.band().name();
    }

    private static List<Row> rows(List<SignedForm> scored) {
        Map<String, Double> ease = scored.stream()
                .flatMap(form -> form.levels().entrySet().stream())
                .collect(Collectors.groupingBy(Map.Entry::getKey, Collectors.averagingInt(Map.Entry::getValue)));
        double usual = ease.values().stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        Map<String, List<SignedForm>> own = scored.stream().collect(Collectors.groupingBy(SignedForm::trainee));
        List<Row> rows = new ArrayList<>();
        own.forEach((trainee, forms) -> {
            for (int i = 0; i < forms.size(); i++) {
                SignedForm form = forms.get(i);
                double value = form.levels().entrySet().stream()
                        .mapToDouble(step -> step.getValue() - ease.getOrDefault(step.getKey(), usual) + usual)
                        .average()
                        .orElse(usual);
                rows.add(new Row(form, value, trainee + " " + THIRDS * i / forms.size()));
            }
        });
        return rows;
    }

    private static Map<String, Double> effects(
            List<Row> rows, Function<Row, String> group, Function<Row, Double> value) {
        return rows.stream().collect(Collectors.groupingBy(group, Collectors.averagingDouble(value::apply)));
    }

    /** Every scorer and band weighs alike in what is usual, however many sheets it has. */
    private static Map<String, Double> centred(Map<String, Double> effects) {
        double mean = effects.values().stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(0);
        return effects.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> entry.getValue() - mean));
    }

    /** A trainee's sheets, oldest case first; empty for one without any. */
    public List<Point> of(String trainee) {
        return byTrainee.getOrDefault(trainee, List.of());
    }

    /** How much higher (+) or lower (−) a scorer scores the same work than the mean colleague, in levels. */
    public double offset(String scorer) {
        return offsets.getOrDefault(scorer, 0.);
    }

    /** Standard deviation of a sheet about the level of its third, in levels. */
    public double spread() {
        return spread;
    }

    private static final class Row {

        private final SignedForm form;
        private final double value;
        private final String group;
        private double third;

        Row(SignedForm form, double value, String group) {
            this.form = form;
            this.value = value;
            this.group = group;
        }

        double without(Map<String, Double> scorers, Map<String, Double> bands) {
            return value - scorers.getOrDefault(form.scorer(), 0.) - bands.getOrDefault(band(form), 0.);
        }
    }
}
