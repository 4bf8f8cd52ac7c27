package org.scrubline.rubric.change;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.change.RubricChange.Kind;

/**
 * What a version changes against another: steps are matched by their code alone, as the curves do, so the same code is the
 * same step whatever it is called.
 */
public final class RubricComparison {

    private static final double MUCH = 0.5;

    private final List<RubricChange> changes = new ArrayList<>();

    private RubricComparison() {}

    /** Every change: the title, then step by step in the order of {@code after}, then what is gone. Empty when all is equal. */
    public static List<RubricChange> between(Rubric before, Rubric after) {
        RubricComparison comparison = new RubricComparison();
        comparison.text(Kind.TITLE, "", "", before.title(), after.title());
        Set<String> stayed = new HashSet<>(inOrder(codes(before), codes(after)));
        for (Step step : after.steps()) {
            before.find(step.code())
                    .ifPresentOrElse(
                            old -> comparison.step(old, step, !stayed.contains(step.code())),
                            () -> comparison.add(Kind.STEP_NEW, step, "", ""));
        }
        before.steps().stream()
                .filter(step -> after.find(step.code()).isEmpty())
                .forEach(step -> comparison.add(Kind.STEP_GONE, step, "", ""));
        return comparison.changes;
    }

    private void step(Step old, Step step, boolean moved) {
        if (moved || old.phase() != step.phase()) {
            add(Kind.STEP_MOVED, step, old.phase().name(), step.phase().name());
        }
        text(Kind.STEP_RENAMED, step.code(), step.name(), old.name(), step.name());
        if (inCommon(old.name(), step.name()) < MUCH) {
            add(Kind.MEANING_IN_DOUBT, step, old.name(), step.name());
        }
        if (old.critical() != step.critical()) {
            add(step.critical() ? Kind.CRITICAL_NOW : Kind.CRITICAL_NO_MORE, step, "", "");
        }
        if (old.onlyWhenConverted() != step.onlyWhenConverted()) {
            add(step.onlyWhenConverted() ? Kind.ONLY_WHEN_CONVERTED : Kind.ALWAYS_OFFERED, step, "", "");
        }
        text(Kind.SEES, step.code(), step.name(), old.sees(), step.sees());
        for (int level = 1; level <= Step.LEVELS; level++) {
            text(Kind.LEVEL, step.code(), Integer.toString(level), old.sentence(level), step.sentence(level));
        }
        text(Kind.HAZARDS, step.code(), step.name(), lines(old.hazards()), lines(step.hazards()));
        text(Kind.COACHING, step.code(), step.name(), lines(old.coaching()), lines(step.coaching()));
        text(Kind.SOURCES, step.code(), step.name(), lines(old.sources()), lines(step.sources()));
        measures(old, step);
    }

    private void measures(Step old, Step step) {
        for (Measure measure : step.measures()) {
            find(old, measure.code())
                    .ifPresentOrElse(
                            was -> measure(step, was, measure),
                            () -> change(Kind.MEASURE_NEW, step, measure.name(), "", measure.accepted()));
        }
        old.measures().stream()
                .filter(measure -> find(step, measure.code()).isEmpty())
                .forEach(measure -> change(Kind.MEASURE_GONE, step, measure.name(), measure.accepted(), ""));
    }

    private void measure(Step step, Measure was, Measure is) {
        boolean tolerance = band(was).equals(band(is));
        if (!tolerance) {
            change(Kind.MEASURE_TOLERANCE, step, is.name(), band(was), band(is));
        } else if (!was.equals(is)) {
            change(Kind.MEASURE_CHANGED, step, is.name(), was.name(), is.name());
        }
    }

    private static String band(Measure measure) {
        String from = measure.acceptFrom() == null ? "…" : measure.acceptFrom().toPlainString();
        String to = measure.acceptTo() == null ? "…" : measure.acceptTo().toPlainString();
        return (from + "–" + to + " " + measure.unit()).strip();
    }

    private static Optional<Measure> find(Step step, String code) {
        return step.measures().stream()
                .filter(measure -> measure.code().equals(code))
                .findFirst();
    }

    private void text(Kind kind, String step, String name, String before, String after) {
        if (!before.equals(after)) {
            changes.add(new RubricChange(kind, step, name, before, after));
        }
    }

    private void add(Kind kind, Step step, String before, String after) {
        change(kind, step, step.name(), before, after);
    }

    private void change(Kind kind, Step step, String name, String before, String after) {
        changes.add(new RubricChange(kind, step.code(), name, before, after));
    }

    private static String lines(List<String> texts) {
        return String.join(" · ", texts);
    }

    private static List<String> codes(Rubric rubric) {
        return rubric.steps().stream().map(Step::code).toList();
    }

    /** Words two names share, as a share of all their words: 1 for the same words, 0 for none in common. */
    private static double inCommon(String one, String other) {
        Set<String> words = words(one);
        Set<String> all = new HashSet<>(words);
        all.addAll(words(other));
        words.retainAll(words(other));
        return all.isEmpty() ? 1 : (double) words.size() / all.size();
    }

    private static Set<String> words(String name) {
        Set<String> words =
                new HashSet<>(Arrays.asList(name.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+", -1)));
        words.remove("");
        return words;
    }

    /** The longest run of codes that stand in the same order in both lists; every other common code has moved. */
    private static List<String> inOrder(List<String> before, List<String> after) {
        int[][] longest = new int[before.size() + 1][after.size() + 1];
        for (int i = before.size() - 1; i >= 0; i--) {
            for (int j = after.size() - 1; j >= 0; j--) {
                longest[i][j] = before.get(i).equals(after.get(j))
                        ? longest[i + 1][j + 1] + 1
                        : Math.max(longest[i + 1][j], longest[i][j + 1]);
            }
        }
        List<String> kept = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < before.size() && j < after.size()) {
            if (before.get(i).equals(after.get(j))) {
                kept.add(before.get(i));
                i++;
                j++;
            } else if (longest[i + 1][j] >= longest[i][j + 1]) {
                i++;
            } else {
                j++;
            }
        }
        return kept;
    }
}
