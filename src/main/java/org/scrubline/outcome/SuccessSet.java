package org.scrubline.outcome;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.scrubline.outcome.OutcomeEntry.Baseline;

/**
 * Limits by which an operation is said to have succeeded. The four upper limits and their falls are those of a world glaucoma
 * association's book of 2008 (from memory, the book was not read); a rate means nothing without its definition: 144 of them
 * put the same operations anywhere from 8.7 to 74.0 % at five years (2025, read as an abstract).
 */
public enum SuccessSet {
    UP_TO_21(21, 20),
    UP_TO_18(18, 20),
    UP_TO_15(15, 30),
    UP_TO_12(12, 40);

    private final int upper;
    private final int fall;

    SuccessSet(int upper, int fall) {
        this.upper = upper;
        this.fall = fall;
    }

    /** The highest pressure inside, mmHg. */
    public int upper() {
        return upper;
    }

    /** The least fall from the baseline, percent. */
    public int fall() {
        return fall;
    }

    /** What is said of one case. */
    public enum Result {
        /** Inside on two visits running, never outside on two, and no drops from month 3 on. */
        WITHOUT_DROPS,
        /** The same, but drops at one of these visits or more. */
        WITH_DROPS,
        OUTSIDE,
        /** Too little is known. */
        OPEN
    }

    /** Why a case is outside. */
    public enum Ground {
        MORE_SURGERY,
        LIGHT_LOST,
        PRESSURE,
        /** On both visits nothing but a pressure below the lower limit. */
        LOW_PRESSURE_ALONE
    }

    /** A result with its ground, which is empty unless it is outside. */
    public record Judgement(Result result, Optional<Ground> ground) {

        static Judgement of(Result result) {
            return new Judgement(result, Optional.empty());
        }

        static Judgement outside(Ground ground) {
            return new Judgement(Result.OUTSIDE, Optional.of(ground));
        }

        /** Inside, with or without drops. */
        public boolean inside() {
            return result == Result.WITHOUT_DROPS || result == Result.WITH_DROPS;
        }

        /** Enough is known. */
        public boolean known() {
            return result != Result.OPEN;
        }
    }

    /**
     * Judges a case by what is known of it.
     *
     * @param lowest the lowest pressure inside, mmHg
     */
    public Judgement judge(CaseOutcome outcome, int lowest) {
        List<CaseOutcome.Placed> all = outcome.visits();
        if (all.stream().anyMatch(one -> one.visit().moreSurgery())) {
            return Judgement.outside(Ground.MORE_SURGERY);
        }
        if (all.stream().anyMatch(one -> one.visit().lightLost())) {
            return Judgement.outside(Ground.LIGHT_LOST);
        }
        Optional<Pressure> before = outcome.baseline().map(Baseline::pressure).filter(pressure -> pressure.iop() > 0);
        return before.map(pressure -> byPressure(outcome.judged(), pressure, lowest))
                .orElseGet(() -> Judgement.of(Result.OPEN));
    }

    private Judgement byPressure(List<Visit> visits, Pressure before, int lowest) {
        Predicate<Visit> high =
                visit -> visit.pressure().iop() > upper || !visit.pressure().fell(fall, before);
        Predicate<Visit> outside = high.or(visit -> visit.pressure().iop() < lowest);
        if (running(visits, outside, outside)) {
            boolean alsoHigh = running(visits, high, outside) || running(visits, outside, high);
            return Judgement.outside(alsoHigh ? Ground.PRESSURE : Ground.LOW_PRESSURE_ALONE);
        }
        if (!running(visits, outside.negate(), outside.negate())) {
            return Judgement.of(Result.OPEN);
        }
        boolean drops = visits.stream().anyMatch(visit -> visit.pressure().drops() > 0);
        return Judgement.of(drops ? Result.WITH_DROPS : Result.WITHOUT_DROPS);
    }

    /** Whether one visit is the first and the very next one the second. */
    private static boolean running(List<Visit> visits, Predicate<Visit> first, Predicate<Visit> second) {
        return IntStream.range(1, visits.size())
                .anyMatch(i -> first.test(visits.get(i - 1)) && second.test(visits.get(i)));
    }
}
