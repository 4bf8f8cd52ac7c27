package org.scrubline.progress;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.CurvePoint;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.scoring.curve.StepGap;

/**
 * What the model says about one trainee and procedure, and from which data.
 *
 * @param cases those with a scored step, oldest first
 * @param until the newest signature among the programme's sheets the curve rests on
 * @param fittedUntil the newest signature among those the population values rest on
 * @param fittedSheets how many sheets those are
 * @param ownFit whether the programme had enough of them to decide thresholds and variances itself
 * @param wantedStep chance wanted of a single step, 0..1
 * @param gaps why raw shares and modelled chances differ, one for each step with a score
 */
public record TraineeCurve(
        CompetencyCurve model,
        List<Point> cases,
        Instant until,
        Instant fittedUntil,
        int fittedSheets,
        boolean ownFit,
        double wantedStep,
        List<StepGap> gaps) {

    /** From this difference on between raw share and modelled chance a page says why, 0..1. */
    private static final double WORTH_A_SENTENCE = 0.15;

    /**
     * One case on the curve.
     *
     * @param daysAway whole days since the case before when that was a gap, otherwise 0
     */
    public record Point(CountedCase counted, CurvePoint level, int daysAway) {

        /** Chance of level 4 or 5 on the average step of a plain case on an ordinary day, 0..1. */
        public double chance() {
            return logistic(level.level());
        }

        /** Lower end of the 90 % band of {@link #chance()}. */
        public double low() {
            return logistic(level.low());
        }

        /** Upper end of the 90 % band of {@link #chance()}. */
        public double high() {
            return logistic(level.high());
        }

        private static double logistic(double logit) {
            return 1 / (1 + Math.exp(-logit));
        }
    }

    public TraineeCurve {
        cases = List.copyOf(cases);
        gaps = List.copyOf(gaps);
    }

    /** Pairs each point of the curve with its case. */
    static List<Point> points(Evidence evidence, CompetencyCurve model, Duration gap) {
        Map<String, CountedCase> byId = new HashMap<>();
        evidence.cases().forEach(one -> byId.put(one.id().toString(), one));
        List<Point> points = new ArrayList<>();
        for (CurvePoint level : model.points()) {
            CountedCase counted = Objects.requireNonNull(byId.get(level.caseId()));
            int away = points.isEmpty()
                    ? 0
                    : CaseChart.daysAway(points.get(points.size() - 1).counted().endedAt(), counted.endedAt(), gap);
            points.add(new Point(counted, level, away));
        }
        return points;
    }

    /** Whether a modelled number may be printed. */
    public boolean shown() {
        return model.evidence().shown();
    }

    /** Differences of more than 15 points between raw share and modelled chance. */
    public List<StepGap> wideGaps() {
        return gaps.stream()
                .filter(gap -> Math.abs(gap.size()) > WORTH_A_SENTENCE)
                .toList();
    }

    /** The next typical case against each standard; empty while no number may be printed. */
    public List<Readiness> nextCase() {
        return shown() ? model.readiness() : List.of();
    }
}
