package org.scrubline.cohort;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.progress.CaseChart;
import org.scrubline.progress.Gates;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.Shortfall;
import org.scrubline.progress.StepProgress;

/**
 * Something a director may want to look at, with its reason. Never raised by one case or by one scorer alone.
 *
 * @param step the step meant by {@link Kind#LOW_STEP}, null otherwise
 * @param has the number that raised it: days, scorers, sheets of one scorer, or scores at 4 or 5
 * @param of what it is measured against: cases or sheets or scores in all; for a gap the days allowed
 * @param others share at level 4 or 5 over the trainee's other steps, 0 to 1; 0 unless a step is meant
 */
public record WorthALook(
        Kind kind, Person trainee, @Nullable StepProgress step, int has, int of, double others) {

    /** Scores a step needs before its share can be worth a look. */
    static final int LOW_STEP_SCORES = 8;

    /** A step at or above this share is never worth a look, however good the others are. */
    static final double LOW_STEP_SHARE = 0.80;

    private static final int FEW_SCORERS_CASES = 5;
    private static final int DIFFERENT = 2;

    /** What it is about. */
    public enum Kind {
        /** No case for longer than the programme shows as a gap. */
        GAP,
        /** Five cases or more, and too few scorers to conclude. */
        FEW_SCORERS,
        /** Twelve cases or more, and more than 40 % of the sheets from one scorer. */
        ONE_SCORER,
        /** A critical step whose 95 % interval ends below 80 % and below the trainee's other steps, over at least 8 scores. */
        LOW_STEP
    }

    /** Everything worth a look in this row, exposure first. */
    static List<WorthALook> in(TraineeRow row, Instant now, ProgrammeSettings settings) {
        List<WorthALook> found = new ArrayList<>();
        gap(row, now, settings.gapShown()).ifPresent(found::add);
        ProcedureProgress progress = row.progress();
        if (progress != null) {
            scorers(row, progress.gates()).ifPresent(found::add);
            progress.steps()
                    .forEach(step -> lowStep(row, step, progress.steps()).ifPresent(found::add));
        }
        return List.copyOf(found);
    }

    private static Optional<WorthALook> gap(TraineeRow row, Instant now, Duration longest) {
        Instant last = row.lastCaseAt();
        int days = last == null ? 0 : CaseChart.daysAway(last, now, longest);
        return days == 0
                ? Optional.empty()
                : Optional.of(new WorthALook(Kind.GAP, row.trainee(), null, days, (int) longest.toDays(), 0));
    }

    /** The first case needs no second scorer yet; from the fifth on, one is too few, from the twelfth on, three are. */
    private static Optional<WorthALook> scorers(TraineeRow row, Gates gates) {
        boolean fewer = has(gates.shown(), Shortfall.Kind.SCORERS).isPresent()
                || (enoughCases(gates)
                        && has(gates.supports(), Shortfall.Kind.SCORERS).isPresent());
        if (fewer && row.cases() >= FEW_SCORERS_CASES) {
            return Optional.of(new WorthALook(Kind.FEW_SCORERS, row.trainee(), null, row.scorers(), row.cases(), 0));
        }
        return has(gates.supports(), Shortfall.Kind.ONE_SCORER)
                .filter(shortfall -> enoughCases(gates))
                .map(shortfall ->
                        new WorthALook(Kind.ONE_SCORER, row.trainee(), null, shortfall.has(), shortfall.needs(), 0));
    }

    private static boolean enoughCases(Gates gates) {
        return has(gates.supports(), Shortfall.Kind.CASES).isEmpty();
    }

    private static Optional<Shortfall> has(List<Shortfall> shortfalls, Shortfall.Kind kind) {
        return shortfalls.stream().filter(shortfall -> shortfall.kind() == kind).findFirst();
    }

    /**
     * A step that stays behind the others. Below the standard alone is no signal: everyone who is still learning is
     * below it on most steps.
     */
    private static Optional<WorthALook> lowStep(TraineeRow row, StepProgress step, List<StepProgress> all) {
        boolean low = step.current()
                && step.step().critical()
                && step.scored() >= LOW_STEP_SCORES
                && step.interval().high() < LOW_STEP_SHARE;
        if (!low) {
            return Optional.empty();
        }
        String code = step.step().code();
        double others = share(
                all.stream().filter(other -> !other.step().code().equals(code)).toList());
        boolean behind =
                step.interval().high() < others && step.lowCases() >= DIFFERENT && step.lowScorers() >= DIFFERENT;
        return behind
                ? Optional.of(new WorthALook(Kind.LOW_STEP, row.trainee(), step, step.high(), step.scored(), others))
                : Optional.empty();
    }

    /** Share at level 4 or 5 over all scores of these steps; 0 when there are none. */
    private static double share(List<StepProgress> steps) {
        int scored = steps.stream().mapToInt(StepProgress::scored).sum();
        int high = steps.stream().mapToInt(StepProgress::high).sum();
        return scored == 0 ? 0 : (double) high / scored;
    }
}
