package org.scrubline.demo.plan;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

/** Picks the cases in which something unusual happens, each case at most once. */
final class Oddities {

    /** The trainees with the fewest signed cases keep them as they are. */
    private static final Set<String> NOT_WITH = Set.of("T13", "T14");

    private final List<Asked> shuffled;
    private final double scale;
    private final Set<Integer> chosen = new HashSet<>();

    Oddities(List<Asked> asked, double scale, Draws draws) {
        this.shuffled = draws.shuffled(asked.stream()
                .filter(one -> one.status() == CaseStatus.SIGNED)
                .filter(one -> !NOT_WITH.contains(one.operation().slot().trainee()))
                .toList());
        this.scale = scale;
    }

    /** Numbers of that many cases, fewer where the plan is small. */
    List<Integer> choose(int ofAll, Predicate<Asked> wanted) {
        List<Integer> numbers = shuffled.stream()
                .filter(wanted)
                .map(one -> one.operation().number())
                .filter(number -> !chosen.contains(number))
                .limit(Math.round(ofAll * scale))
                .toList();
        chosen.addAll(numbers);
        return numbers;
    }
}
