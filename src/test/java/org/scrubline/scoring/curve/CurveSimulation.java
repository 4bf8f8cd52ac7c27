package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * Simulated programmes whose truth differs from the model: how often bands hold the truth, and whether chances,
 * assurances and forecasts come true. Failure here is level below 4 on a critical step.
 */
final class CurveSimulation {

    private static final ProcedureStandard STANDARD = ProcedureStandard.usual(SimulatedProgramme.CRITICAL);
    private static final CompetencyModel MODEL = new CompetencyModel(ModelSettings.standard(SimulatedProgramme.LEVELS));
    private static final int E4 = 2;
    private static final double WANTED = 0.5;

    final List<Double> coverageByProgramme = new ArrayList<>();
    final Calibration steps = new Calibration(10);
    final Calibration wholeCase = new Calibration(10);
    final Calibration assurance = new Calibration(5);
    final Calibration within20 = new Calibration(5);
    int forecasts;
    int forecastsHeld;
    private int points;
    private double squares;
    private double bias;
    private final MovingMean moving = new MovingMean();

    /** All trainees of programmes fitted with their own scores. */
    void ownFit(int from, int programmes) {
        for (int p = from; p < from + programmes; p++) {
            SimulatedProgramme programme = new SimulatedProgramme("", 100 + p, 14, 9, 64);
            ScoreTable table = programme.table();
            PopulationFit fit = MODEL.fit(table);
            int in = 0;
            int all = 0;
            for (int t = 0; t < 14; t++) {
                CompetencyCurve curve = CompetencyModel.smooth(fit, table, "t" + t, STANDARD);
                Map<Long, Double> means = MovingMean.of(programme.scores, "t" + t);
                for (int i = 0; i < curve.points().size(); i++) {
                    CurvePoint point = curve.points().get(i);
                    double truth = programme.truePanelLevel(t, i, 4);
                    in += truth >= point.low() && truth <= point.high() ? 1 : 0;
                    all++;
                    squares += (point.level() - truth) * (point.level() - truth);
                    bias += point.level() - truth;
                    moving.add(means.get((long) i), truth);
                }
                chances(
                        programme,
                        t,
                        curve.points().size() - 1,
                        curve.readiness().get(E4));
            }
            points += all;
            coverageByProgramme.add((double) in / all);
        }
    }

    private void chances(SimulatedProgramme programme, int t, int last, Readiness readiness) {
        double truth = programme.trueWholeCase(t, last, 4);
        wholeCase.add(readiness.chance(), truth);
        assurance.add(readiness.assurance(), truth >= WANTED ? 1 : 0);
        for (Readiness.StepChance step : readiness.steps()) {
            int s = Integer.parseInt(step.step().substring(1));
            steps.add(step.chance(), programme.trueStep(t, last, s, 4));
        }
    }

    /** New trainees at 10 to 40 cases, with a fit of an earlier cohort under the same supervisors. */
    void newTrainees(int from, int programmes, Estimation estimation) {
        for (int p = from; p < from + programmes; p++) {
            double[][] habits = SimulatedProgramme.supervisorHabits(new Random(p), 9);
            SimulatedProgramme earlier = new SimulatedProgramme("", "old", 500 + p, 14, 64, habits, p);
            SimulatedProgramme later = new SimulatedProgramme("", "new", 900 + p, 14, 70, habits, p);
            List<String> codes = earlier.table().steps();
            PopulationFit fit = MODEL.fit(earlier.table(), Psi.shipped(5, SimulatedProgramme.STEPS, 3), estimation);
            for (int t = 0; t < 14; t++) {
                for (int n = 10; n <= 40 && n + 5 < later.level[t].length; n += 10) {
                    int cases = n;
                    String id = "new" + t;
                    List<ObservedScore> known = later.scores.stream()
                            .filter(s -> s.trainee().equals(id) && s.context().order() < cases)
                            .toList();
                    CompetencyCurve curve = CompetencyModel.smooth(fit, ScoreTable.of(5, codes, known), id, STANDARD);
                    chances(later, t, n, curve.readiness().get(E4));
                    if (curve.evidence().shown()) {
                        forecast(later, t, n, curve.readiness().get(E4).forecast());
                    }
                }
            }
        }
    }

    private void forecast(SimulatedProgramme programme, int t, int n, Forecast forecast) {
        int followed = programme.level[t].length - n - 1;
        int wait = -1;
        for (int k = 0; k <= followed && wait < 0; k++) {
            wait = programme.trueWholeCase(t, n + k, 4) >= WANTED ? k : -1;
        }
        boolean held = wait >= 0 ? wait >= forecast.low() && wait <= forecast.high() : forecast.high() > followed;
        forecasts++;
        forecastsHeld += held ? 1 : 0;
        if (followed >= 20 || wait >= 0) {
            within20.add(forecast.within20(), wait >= 0 && wait <= 20 ? 1 : 0);
        }
    }

    /** Error of the curves against that of a moving mean of raw levels after its best rescaling. */
    double errorAgainstMovingMean() {
        return Math.sqrt(squares / points) / moving.error();
    }

    double coverage() {
        return coverageByProgramme.stream().mapToDouble(c -> c).average().orElse(0);
    }

    double coverageError() {
        double mean = coverage();
        double sum = coverageByProgramme.stream()
                .mapToDouble(c -> (c - mean) * (c - mean))
                .sum();
        int n = coverageByProgramme.size();
        return Math.sqrt(sum / n / Math.max(n - 1, 1));
    }

    String report() {
        StringBuilder text = new StringBuilder();
        if (points > 0) {
            text.append(String.format(
                    Locale.ROOT,
                    "90 %% bands hold the truth in %.1f %% (se %.1f), root mean square error %.3f (moving mean %.3f), bias %.3f, %d points%n",
                    100 * coverage(),
                    100 * coverageError(),
                    Math.sqrt(squares / points),
                    moving.error(),
                    bias / points,
                    points));
        }
        if (forecasts > 0) {
            text.append(String.format(
                    Locale.ROOT,
                    "80 %% forecasts hold in %.1f %% of %d%n",
                    100.0 * forecastsHeld / forecasts,
                    forecasts));
            text.append("ready within 20 cases\n").append(within20);
        }
        return text.append("chance per step\n")
                .append(steps)
                .append("chance of the whole case\n")
                .append(wholeCase)
                .append("assurance\n")
                .append(assurance)
                .toString();
    }
}
