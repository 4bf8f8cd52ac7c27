package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * New trainees followed case by case under supervisors known from an earlier cohort, parameters as shipped: what each
 * rule of decision would see. Failure here is level below 4 on a critical step.
 */
final class DecisionSimulation {

    static final int CASES = 70;
    static final double WANTED = 0.5;
    private static final int LEVEL = 4;
    private static final int MOST_CRITICAL = 4;
    private static final int E4 = 2;
    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(SimulatedProgramme.LEVELS));

    private DecisionSimulation() {}

    /** Every trainee with at least 70 cases of these programmes, followed for 70. */
    static List<TraineeHistory> histories(int from, int programmes) {
        List<TraineeHistory> histories = new ArrayList<>();
        for (int p = from; p < from + programmes; p++) {
            double[][] habits = SimulatedProgramme.supervisorHabits(new Random(p), 9);
            SimulatedProgramme earlier = new SimulatedProgramme("", "old", 500 + p, 14, 64, habits, p);
            SimulatedProgramme later = new SimulatedProgramme("", "new", 900 + p, 14, 100, habits, p);
            Psi shipped = Psi.shipped(SimulatedProgramme.LEVELS, SimulatedProgramme.STEPS, 3);
            PopulationFit fit = MODEL.fit(earlier.table(), shipped, Estimation.DIFFICULTY);
            Map<String, List<ObservedScore>> scores =
                    later.scores.stream().collect(Collectors.groupingBy(ObservedScore::trainee));
            for (int t = 0; t < later.level.length; t++) {
                if (later.level[t].length >= CASES) {
                    histories.add(history(p, later, t, scores.get("new" + t), fit));
                }
            }
        }
        return histories;
    }

    private static TraineeHistory history(
            int programme, SimulatedProgramme later, int t, List<ObservedScore> scores, PopulationFit fit) {
        List<Double> truth = new ArrayList<>();
        List<Double> assurance = new ArrayList<>();
        List<Boolean> decidable = new ArrayList<>();
        List<TraineeHistory.Counted> counted = new ArrayList<>();
        for (int n = 1; n <= CASES; n++) {
            int cases = n;
            List<ObservedScore> known =
                    scores.stream().filter(s -> s.context().order() < cases).toList();
            ScoreTable table = ScoreTable.of(SimulatedProgramme.LEVELS, fit.steps(), known);
            CompetencyCurve curve = CompetencyModel.smooth(fit, table, "new" + t, STANDARD);
            truth.add(later.trueWholeCase(t, n, LEVEL));
            assurance.add(curve.readiness().get(E4).assurance());
            decidable.add(curve.evidence().mayDecide());
            result(scores, n).ifPresent(counted::add);
        }
        return new TraineeHistory(programme, truth, assurance, decidable, counted, strictness(later, scores));
    }

    private static Optional<TraineeHistory.Counted> result(List<ObservedScore> scores, int n) {
        int[] critical = scores.stream()
                .filter(s -> s.context().order() == n - 1 && SimulatedProgramme.CRITICAL.contains(s.step()))
                .mapToInt(ObservedScore::lowest)
                .toArray();
        boolean failure = Arrays.stream(critical).anyMatch(y -> y < LEVEL);
        double mean = Arrays.stream(critical).average().orElse(1);
        return critical.length >= MOST_CRITICAL || failure
                ? Optional.of(new TraineeHistory.Counted(n, failure, mean))
                : Optional.empty();
    }

    private static double strictness(SimulatedProgramme programme, List<ObservedScore> scores) {
        Map<String, String> scorers = new TreeMap<>();
        scores.stream()
                .filter(s -> s.context().order() < CASES)
                .forEach(s -> scorers.put(s.assessment(), s.supervisor()));
        double own = scorers.values().stream()
                .mapToDouble(v -> programme.severity[Integer.parseInt(v.substring(1))])
                .average()
                .orElseThrow();
        return own - programme.meanSeverity();
    }
}
