package org.scrubline.casework.web;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;

/** Sentences to pick from: what went best in the words of its level, what to practise in the words of its coaching. */
class Suggestions {

    private static final int AT_MOST = 3;
    private static final int STRONG_FROM = 4;

    private final Rubric rubric;
    private final Sheet sheet;

    Suggestions(Rubric rubric, Sheet sheet) {
        this.rubric = rubric;
        this.sheet = sheet;
    }

    /** The steps scored highest, critical ones first; none below 4. */
    List<String> strengths() {
        return scored(Comparator.comparingInt(this::level).reversed())
                .filter(step -> level(step) >= STRONG_FROM)
                .limit(AT_MOST)
                .map(step -> step.name() + ": " + step.sentence(level(step)))
                .toList();
    }

    /** Coaching of the steps scored lowest, critical ones first; none where every step is at 5. */
    List<String> nextSteps() {
        return scored(Comparator.comparingInt(this::level))
                .filter(step -> level(step) < Step.LEVELS && !step.coaching().isEmpty())
                .limit(AT_MOST)
                .map(step -> step.name() + ": " + step.coaching().get(0))
                .toList();
    }

    private Stream<Step> scored(Comparator<Step> order) {
        Function<Step, Boolean> standard = step -> !step.critical();
        return rubric.steps().stream().filter(step -> level(step) > 0).sorted(order.thenComparing(standard));
    }

    private int level(Step step) {
        return sheet.step(step.code()) instanceof StepState.Scored scored ? scored.level() : 0;
    }
}
