package org.scrubline.progress;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.scrubline.casework.FocusSteps;
import org.scrubline.people.Settings;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes today's focus from what the trainee would be told to practise next. */
@Service
class SignedFocus implements FocusSteps {

    private final SignedSheets sheets;
    private final Rubrics rubrics;
    private final Settings settings;

    SignedFocus(SignedSheets sheets, Rubrics rubrics, Settings settings) {
        this.sheets = sheets;
        this.rubrics = rubrics;
        this.settings = settings;
    }

    @Override
    @Transactional(readOnly = true)
    public List<Focus> of(UUID programmeId, UUID traineeId, String procedureCode) {
        return progress(programmeId, traineeId, procedureCode)
                .map(SignedFocus::focus)
                .orElseGet(List::of);
    }

    /** The numbers of one trainee in one programme; empty when no sheet counts. */
    Optional<ProcedureProgress> progress(UUID programmeId, UUID traineeId, String procedureCode) {
        List<SignedSheet> signed = sheets.ofTrainee(traineeId, procedureCode).stream()
                .filter(sheet -> sheet.programmeId().equals(programmeId))
                .toList();
        Function<UUID, Rubric> versions = rubrics.published().stream()
                .collect(Collectors.toMap(PublishedRubric::id, PublishedRubric::rubric))::get;
        return ProcedureProgress.of(signed, versions, settings.of(programmeId));
    }

    static List<Focus> focus(ProcedureProgress progress) {
        return progress.practiseNext().stream().map(SignedFocus::focus).toList();
    }

    private static Focus focus(StepProgress step) {
        List<StepScore> scored = step.scores().stream()
                .filter(score -> score.level().isPresent())
                .toList();
        return new Focus(
                step.step(),
                step.scored(),
                step.high(),
                scored.get(scored.size() - 1).sheet().caseEndedAt());
    }
}
