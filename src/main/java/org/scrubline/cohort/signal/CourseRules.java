package org.scrubline.cohort.signal;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.scrubline.scoring.curve.Flag;

/** How a trainee's level moves: plateau, regression, break, and steps that stay behind. Limits are this project's own. */
final class CourseRules {

    /** Cases a course needs before its thirds say anything. */
    static final int PLATEAU_CASES = 36;

    /** A smaller rise from the second to the last third is hardly one, in logits over all days. */
    static final double PLATEAU_RISE = 0.65;

    /** Below this level in the last third an average step is at 4 or 5 in less than 87 % of plain cases. */
    static final double PLATEAU_LEVEL = 1.9;

    /** Fall of the smoothed course that confirms the engine's case-by-case signal, in logits over all days. */
    static final double FALL = 0.5;

    private static final int FALL_WINDOW = 6;

    /** Two steps together lie so many standard deviations below the others. */
    static final double BEHIND = 1.85;

    private static final int BEHIND_SEEN = 8;
    private static final double BEHIND_LEAST = 0.15;
    private static final int AROUND_BREAK = 8;

    private CourseRules() {}

    /** Level and rise are asked apart: to lead the rise on into cases to come would double its error. */
    static Optional<Signal> plateau(TraineeFacts facts) {
        int cases = facts.course().size();
        if (cases < PLATEAU_CASES) {
            return Optional.empty();
        }
        int third = cases / 3;
        double last = facts.level(cases - third, cases);
        double rise = last - facts.level(third, cases - third);
        return rise < PLATEAU_RISE && last < PLATEAU_LEVEL
                ? Optional.of(Signal.of(
                        Signal.Kind.PLATEAU,
                        facts.trainee(),
                        List.of((double) third, chance(last - rise), chance(last)),
                        newest(facts, third)))
                : Optional.empty();
    }

    /** The engine's signal case by case is lively; it counts when the smoothed course has fallen too and no break is near. */
    static Optional<Signal> regression(TraineeFacts facts, Duration gap) {
        boolean dropped = facts.flags().stream().anyMatch(flag -> flag.kind() == Flag.Kind.DROP);
        int cases = facts.course().size();
        double now = facts.level(cases - FALL_WINDOW, cases);
        double best = Double.NEGATIVE_INFINITY;
        for (int i = FALL_WINDOW; i <= cases - FALL_WINDOW; i++) {
            best = Math.max(best, facts.level(i - FALL_WINDOW, i));
        }
        return dropped && best - now >= FALL && longestBreak(facts, gap).isEmpty()
                ? Optional.of(Signal.of(
                        Signal.Kind.REGRESSION,
                        facts.trainee(),
                        List.of(chance(best), chance(now), (double) FALL_WINDOW),
                        newest(facts, FALL_WINDOW)))
                : Optional.empty();
    }

    /** Figures: days away, cases since, chance before, chance now (NaN without scored cases on a side). */
    static Optional<Signal> longBreak(TraineeFacts facts, Duration gap) {
        return longestBreak(facts, gap).map(away -> {
            int before = (int) facts.course().stream()
                    .filter(point -> !point.endedAt().isAfter(away.from))
                    .count();
            int cases = facts.course().size();
            return Signal.of(
                    Signal.Kind.BREAK,
                    facts.trainee(),
                    List.of(
                            (double) away.days,
                            (double) (cases - before),
                            chance(facts.level(before - AROUND_BREAK, before)),
                            chance(facts.level(Math.max(before, cases - AROUND_BREAK), cases))),
                    facts.forms().stream()
                            .filter(form -> form.endedAt().isAfter(away.from))
                            .toList());
        });
    }

    /** True when the level after a break is at least where it was before it. */
    static boolean recovered(Signal aBreak) {
        return aBreak.figures().get(3) >= aBreak.figures().get(2);
    }

    private record Away(Instant from, long days) {}

    private static Optional<Away> longestBreak(TraineeFacts facts, Duration gap) {
        Away longest = null;
        for (int i = 1; i < facts.ended().size(); i++) {
            Instant from = facts.ended().get(i - 1);
            Duration away = Duration.between(from, facts.ended().get(i));
            if (away.compareTo(gap) > 0 && (longest == null || away.toDays() > longest.days)) {
                longest = new Away(from, away.toDays());
            }
        }
        return Optional.ofNullable(longest);
    }

    /** The two steps farthest behind, together; with every other step that far behind beside them. */
    static Optional<Signal> stepsBehind(TraineeFacts facts) {
        List<TraineeFacts.OwnStep> steps = facts.steps().stream()
                .filter(step -> step.seen() >= BEHIND_SEEN)
                .sorted(Comparator.comparingDouble(step -> step.effect() / step.sd()))
                .toList();
        if (steps.size() < 3) {
            return Optional.empty();
        }
        TraineeFacts.OwnStep first = steps.get(0);
        TraineeFacts.OwnStep second = steps.get(1);
        double apart = -(first.effect() + second.effect()) / Math.hypot(first.sd(), second.sd());
        if (apart <= BEHIND) {
            return Optional.empty();
        }
        List<String> behind = steps.stream()
                .filter(step -> step.effect() < -BEHIND_LEAST && step.effect() < -step.sd())
                .map(TraineeFacts.OwnStep::code)
                .toList();
        List<SignedForm> low = facts.forms().stream()
                .filter(form -> behind.stream().anyMatch(code -> form.levels().getOrDefault(code, 5) < 4))
                .toList();
        return Optional.of(
                new Signal(Signal.Kind.STEPS_BEHIND, facts.trainee(), "", behind, List.of(apart), Signal.ids(low)));
    }

    private static List<SignedForm> newest(TraineeFacts facts, int cases) {
        Instant from = facts.course().get(facts.course().size() - cases).endedAt();
        return facts.forms().stream()
                .filter(form -> !form.endedAt().isBefore(from))
                .toList();
    }

    private static double chance(double level) {
        return 1 / (1 + Math.exp(-level));
    }
}
