package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** Chance, assurance and forecast of the next case from its law. */
final class ReadinessJudge {

    /** Covers what the plugged-in population parameters leave out. */
    static final double INFLATION = 1.1;

    /** Fixed normal deviates of future wobble, draw by draw. */
    private static final class Future {
        static final double[] WOBBLE = wobble();

        private static double[] wobble() {
            SplittableRandom random = new SplittableRandom(20260101L);
            NormalDistribution normal = NormalDistribution.of(0, 1);
            double[] z = new double[WholeCase.DRAWS * Forecast.HORIZON];
            for (int i = 0; i < z.length; i++) {
                z[i] = normal.inverseCumulativeProbability((random.nextLong() >>> 12) * 0x1p-52 + 0x1p-54);
            }
            return z;
        }
    }

    private static final int MOST_SECANTS = 40;
    private static final double SECANT_TOLERANCE = 1e-4;

    private final Map<Integer, Chances> byLevel = new HashMap<>();
    private final ModelPoint point;
    private final NextCase law;
    private final int[] critical;
    private final List<String> codes;
    private final double[] draws;
    private final WholeCase wholeCase;

    ReadinessJudge(ModelPoint point, NextCase law, int[] critical, List<String> codes, double inflation, int count) {
        this.point = point;
        this.law = law;
        this.critical = critical.clone();
        this.codes = List.copyOf(codes);
        draws = WholeCase.draw(law, inflation, count);
        wholeCase = new WholeCase(critical.length, point.assessmentVarianceOfAll);
    }

    /** Result of one standard before evidence is weighed. */
    @SuppressWarnings("ArrayRecordComponent") // internal, never compared or exposed
    record Chances(double mean, double low, double high, double[] byDraw, double[] sorted, double[] steps) {

        /** Share of draws whose chance reaches the limit. */
        double atLeast(double limit) {
            int below = 0;
            while (below < sorted.length && sorted[below] < limit) {
                below++;
            }
            return (double) (sorted.length - below) / sorted.length;
        }
    }

    /** @param level lowest level that meets the standard */
    Chances chances(int level) {
        int count = draws.length / law.size();
        double[] offset = offset(level);
        double[] all = new double[count];
        double[] steps = new double[critical.length];
        double sum = 0;
        for (int i = 0; i < count; i++) {
            wholeCase.steps(draws, i * law.size(), offset);
            all[i] = wholeCase.chance(draws[i * law.size()]);
            sum += all[i];
            for (int c = 0; c < steps.length; c++) {
                steps[c] += wholeCase.stepChance(c) / count;
            }
        }
        double[] sorted = all.clone();
        Arrays.sort(sorted);
        return new Chances(sum / count, sorted[(int) (0.05 * count)], sorted[(int) (0.95 * count)], all, sorted, steps);
    }

    private double[] offset(int level) {
        double[] offset = new double[critical.length];
        for (int c = 0; c < offset.length; c++) {
            offset[c] = point.beta[critical[c]] + point.tau[level - 2];
        }
        return offset;
    }

    Readiness judge(LevelStandard standard, double assurance, Evidence evidence) {
        Chances chances = byLevel.computeIfAbsent(standard.level(), this::chances);
        double sure = chances.atLeast(standard.chance());
        List<Readiness.StepChance> steps = new ArrayList<>();
        for (int c = 0; c < critical.length; c++) {
            steps.add(new Readiness.StepChance(codes.get(c), chances.steps()[c]));
        }
        Support support = Support.NOT_YET;
        if (!evidence.shown() || critical.length == 0 || (sure >= assurance && !evidence.mayDecide())) {
            support = Support.INSUFFICIENT;
        } else if (sure >= assurance) {
            support = Support.SUPPORTS;
        }
        return new Readiness(
                standard,
                chances.mean(),
                chances.low(),
                chances.high(),
                sure,
                steps,
                support,
                forecast(standard, chances, evidence.shown()));
    }

    private Forecast forecast(LevelStandard standard, Chances now, boolean shown) {
        int count = draws.length / law.size();
        double[] offset = offset(standard.level());
        double[] growth = new double[Forecast.HORIZON + 1];
        double present = point.growth(law.experience());
        for (int k = 0; k <= Forecast.HORIZON; k++) {
            growth[k] = point.growth(law.experience() + k) - present;
        }
        double sd = Math.sqrt(point.walkVariance(1, 0));
        int[] wait = new int[count];
        for (int i = 0; i < count; i++) {
            double chance = now.byDraw()[i];
            if (chance < standard.chance()) {
                wholeCase.steps(draws, i * law.size(), offset);
                double needed = needed(standard.chance(), draws[i * law.size()], chance);
                wait[i] = wait(i, needed, growth, sd);
            }
        }
        Arrays.sort(wait);
        return new Forecast(
                shown,
                wait[count / 10],
                wait[count / 2],
                wait[count * 9 / 10],
                share(wait, 10),
                share(wait, 20),
                share(wait, 60));
    }

    private int wait(int draw, double needed, double[] growth, double sd) {
        int at = draw * law.size();
        double gain = point.gain + draws[at + 1];
        double walk = draws[at];
        for (int k = 0; k <= Forecast.HORIZON; k++) {
            if (walk + gain * growth[k] >= needed) {
                return k;
            }
            walk += k < Forecast.HORIZON ? sd * Future.WOBBLE[draw * Forecast.HORIZON + k] : 0;
        }
        return Forecast.BEYOND;
    }

    private static double share(int[] sorted, int cases) {
        int within = 0;
        while (within < sorted.length && sorted[within] <= cases) {
            within++;
        }
        return Math.min(Forecast.MOST, (double) within / sorted.length);
    }

    /** Common location at which the whole case has this chance: secant steps on the log odds inside a bracket. */
    private double needed(double wanted, double start, double chanceAtStart) {
        double target = logOdds(wanted);
        double low = start;
        double high = 60;
        double slope = 1.5;
        double before = start;
        double beforeValue = logOdds(chanceAtStart) - target;
        double x = Math.min(high, start - beforeValue / slope);
        for (int k = 0; k < MOST_SECANTS; k++) {
            double value = logOdds(wholeCase.wholeChance(x)) - target;
            if (Math.abs(value) < SECANT_TOLERANCE) {
                return x;
            }
            if (value > 0) {
                high = x;
            } else {
                low = x;
            }
            slope = Math.max(0.2, Math.min(50, (value - beforeValue) / (x - before)));
            before = x;
            beforeValue = value;
            double next = x - value / slope;
            x = next > low && next < high ? next : 0.5 * (low + high);
        }
        return x;
    }

    private static double logOdds(double chance) {
        double p = Math.max(1e-300, Math.min(1 - 1e-16, chance));
        return Math.log(p / (1 - p));
    }
}
