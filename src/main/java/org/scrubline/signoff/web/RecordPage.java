package org.scrubline.signoff.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.StaleData;

/**
 * What is or will be signed, in words.
 *
 * @param who trainee, case and time in the line under the heading
 * @param lines label and text of everything that is one sentence: parts, supervision, complexity, rubric
 * @param verdict the phrase
 * @param reasons of the verdict
 * @param selfScored whether the trainee had scored any step before
 * @param feedback strength and next step, those that were written
 */
record RecordPage(
        String trainee,
        List<Fact> who,
        List<Line> lines,
        String verdict,
        List<String> reasons,
        List<PhaseView> phases,
        boolean selfScored,
        List<EventView> events,
        List<Line> feedback) {

    /** A fact for the facts component. */
    record Fact(@Nullable String value, @Nullable String text) {}

    /** One labelled sentence. */
    record Line(String label, String text) {}

    record PhaseView(String nameKey, List<StepView> steps) {}

    /**
     * A step.
     *
     * @param level 1 to 5, null where there is none
     * @param said the sentence of the level, or the state in words
     * @param measures in words
     * @param self the trainee's own level, null where there is none
     */
    record StepView(
            String code,
            String name,
            boolean critical,
            @Nullable Integer level,
            String said,
            List<String> measures,
            @Nullable Integer self) {}

    /** An event; {@code place} is the step it happened on, {@code facts} its reason and whether it blocks. */
    record EventView(String name, @Nullable String place, List<String> facts, String action) {}

    /** The lines in which this, the reader's version, and the stored one differ. */
    List<StaleData.Line> differences(RecordPage stored, String none) {
        Map<String, String> mine = flat();
        Map<String, String> theirs = stored.flat();
        Map<String, String> labels = new LinkedHashMap<>(mine);
        theirs.forEach(labels::putIfAbsent);
        return labels.keySet().stream()
                .filter(label -> !Optional.ofNullable(mine.get(label)).equals(Optional.ofNullable(theirs.get(label))))
                .map(label ->
                        new StaleData.Line(label, mine.getOrDefault(label, none), theirs.getOrDefault(label, none)))
                .toList();
    }

    private Map<String, String> flat() {
        Map<String, String> flat = new LinkedHashMap<>();
        lines.forEach(line -> flat.put(line.label(), line.text()));
        phases.stream().flatMap(phase -> phase.steps().stream()).forEach(step -> {
            String level = step.level() == null ? "" : step.level() + " ";
            flat.put(step.code() + " " + step.name(), level + step.said() + " " + String.join(", ", step.measures()));
        });
        events.forEach(event -> flat.merge(
                event.name(),
                String.join("; ", event.facts()) + " " + event.action(),
                (one, other) -> one + " / " + other));
        feedback.forEach(line -> flat.put(line.label(), line.text()));
        return flat;
    }
}
