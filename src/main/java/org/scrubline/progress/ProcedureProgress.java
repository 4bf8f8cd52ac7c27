package org.scrubline.progress;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.scrubline.signoff.SignedSheet;

/**
 * One trainee and one procedure.
 *
 * @param rubric the version the newest case was scored with
 * @param settings of the programme, as they are now
 * @param steps its steps in order, then those only older versions have
 */
public record ProcedureProgress(
        Rubric rubric, Evidence evidence, List<StepProgress> steps, Gates gates, ProgrammeSettings settings) {

    private static final int PRACTISE = 3;

    public ProcedureProgress {
        steps = List.copyOf(steps);
    }

    /**
     * Counts the sheets of one trainee and one procedure.
     *
     * @param rubrics the rubric of a version id
     * @param settings of the programme
     * @return empty when no sheet counts
     */
    public static Optional<ProcedureProgress> of(
            List<SignedSheet> signed, Function<UUID, Rubric> rubrics, ProgrammeSettings settings) {
        Evidence evidence = Evidence.of(signed);
        if (evidence.cases().isEmpty()) {
            return Optional.empty();
        }
        List<Rubric> used = newestFirst(evidence, rubrics);
        Rubric newest = used.get(0);
        Map<String, List<StepScore>> scores = evidence.steps();
        List<StepProgress> steps = steps(used).stream()
                .map(step -> new StepProgress(
                        step,
                        newest.find(step.code()).isPresent(),
                        settings.shownStepScores(),
                        scores.getOrDefault(step.code(), List.of())))
                .toList();
        return Optional.of(
                new ProcedureProgress(newest, evidence, steps, Gates.of(evidence, steps, settings), settings));
    }

    private static List<Rubric> newestFirst(Evidence evidence, Function<UUID, Rubric> rubrics) {
        Set<UUID> versions = new LinkedHashSet<>();
        List<SignedSheet> sheets = evidence.sheets();
        for (int i = sheets.size() - 1; i >= 0; i--) {
            versions.add(sheets.get(i).rubricVersionId());
        }
        return versions.stream().map(rubrics).toList();
    }

    private static List<Step> steps(List<Rubric> newestFirst) {
        Map<String, Step> steps = new LinkedHashMap<>();
        newestFirst.forEach(rubric -> rubric.steps().forEach(step -> steps.putIfAbsent(step.code(), step)));
        return List.copyOf(steps.values());
    }

    public Optional<StepProgress> step(String code) {
        return steps.stream().filter(step -> step.step().code().equals(code)).findFirst();
    }

    public CaseChart chart() {
        return CaseChart.of(evidence.cases(), settings);
    }

    /**
     * Up to three steps to practise next: critical steps of the newest rubric, scored three times or more and at least
     * once below level 4, by the upper end of their interval, lowest first. The upper end is low only when the share is
     * low and often seen, so a single bad day does not come first. Ties keep the order of the operation.
     */
    public List<StepProgress> practiseNext() {
        return steps.stream()
                .filter(step -> step.current() && step.step().critical())
                .filter(step -> step.enough() && step.high() < step.scored())
                .sorted(Comparator.comparingDouble(step -> step.interval().high()))
                .limit(PRACTISE)
                .toList();
    }
}
