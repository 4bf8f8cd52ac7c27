package org.scrubline.progress;

import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.StepState;
import org.scrubline.rubric.Step;
import org.scrubline.scoring.curve.CaseBand;
import org.scrubline.scoring.curve.CaseContext;
import org.scrubline.scoring.curve.ObservedScore;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.ScoreTableBuilder;
import org.scrubline.signoff.SignedSheet;

/**
 * The counted sheets of one programme and procedure as the competency model reads them: a sheet is an assessment, a
 * scored step a score, everything else said of a step is missing.
 *
 * @param byTrainee what counts about each trainee
 */
record ProgrammeScores(ScoreTable table, Map<UUID, Evidence> byTrainee) {

    ProgrammeScores {
        byTrainee = Map.copyOf(byTrainee);
    }

    /**
     * Sorts the sheets into a table.
     *
     * @param signed sheets of one programme and one procedure
     * @param earlier cases of the procedure declared from before the programme, by trainee; none where there is no entry
     */
    static ProgrammeScores of(Collection<SignedSheet> signed, Map<UUID, Integer> earlier) {
        Map<UUID, Evidence> byTrainee = new LinkedHashMap<>();
        signed.stream()
                .collect(Collectors.groupingBy(SignedSheet::traineeId))
                .forEach((trainee, sheets) -> byTrainee.put(trainee, Evidence.of(sheets)));
        return of(byTrainee, scoredSteps(byTrainee.values()), earlier);
    }

    /**
     * The part of the table that is one trainee's.
     *
     * @param signed sheets of one programme, one procedure and one trainee
     * @param steps what {@link #of} would find scored in the whole programme, sorted
     */
    static ProgrammeScores ofTrainee(
            UUID trainee, Collection<SignedSheet> signed, List<String> steps, Map<UUID, Integer> earlier) {
        return of(Map.of(trainee, Evidence.of(signed)), steps, earlier);
    }

    private static ProgrammeScores of(Map<UUID, Evidence> byTrainee, List<String> steps, Map<UUID, Integer> earlier) {
        ScoreTableBuilder builder = new ScoreTableBuilder(Step.LEVELS, steps, List.of());
        byTrainee.forEach((trainee, evidence) -> add(builder, evidence, earlier.getOrDefault(trainee, 0)));
        return new ProgrammeScores(builder.build(), byTrainee);
    }

    private static List<String> scoredSteps(Collection<Evidence> all) {
        return all.stream()
                .flatMap(evidence -> evidence.sheets().stream())
                .flatMap(sheet -> sheet.steps().stream())
                .filter(step -> step.state() instanceof StepState.Scored)
                .map(SignedSheet.SignedStep::stepCode)
                .distinct()
                .sorted()
                .toList();
    }

    private static void add(ScoreTableBuilder builder, Evidence evidence, int earlier) {
        Instant previous = null;
        int before = earlier;
        for (CountedCase counted : evidence.cases()) {
            CaseContext context = context(counted, before, previous);
            counted.sheets().forEach(sheet -> scores(builder, sheet, context));
            previous = counted.endedAt();
            before++;
        }
    }

    /** Two sheets of one case share its facts, as the newest signature has them. */
    private static CaseContext context(CountedCase counted, int before, @Nullable Instant previous) {
        SignedSheet newest = counted.sheets().get(counted.sheets().size() - 1);
        CaseBand band = CaseBand.valueOf(newest.band().name());
        return CaseContext.of(counted.id().toString(), counted.endedAt(), before, band, previous);
    }

    private static void scores(ScoreTableBuilder builder, SignedSheet sheet, CaseContext context) {
        String assessment = sheet.id().toString();
        String trainee = sheet.traineeId().toString();
        String supervisor = sheet.signerId().toString();
        for (SignedSheet.SignedStep step : sheet.steps()) {
            if (step.state() instanceof StepState.Scored scored) {
                builder.add(
                        new ObservedScore(assessment, trainee, supervisor, context, step.stepCode(), scored.level()));
            }
        }
    }

    Evidence of(UUID trainee) {
        return byTrainee.getOrDefault(trainee, Evidence.of(List.of()));
    }

    /** Number of sheets that count. */
    int sheets() {
        return byTrainee.values().stream().mapToInt(one -> one.sheets().size()).sum();
    }

    /** The newest signature among the sheets; the beginning of time without any. */
    Instant until() {
        return byTrainee.values().stream()
                .flatMap(one -> one.sheets().stream())
                .map(SignedSheet::signedAt)
                .max(Instant::compareTo)
                .orElse(Instant.EPOCH);
    }
}
