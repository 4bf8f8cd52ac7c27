package org.scrubline.progress;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredProgressAsOf implements ProgressAsOf {

    private final SignedSheets sheets;
    private final Rubrics rubrics;
    private final People people;
    private final Settings settings;
    private final PopulationFits fits;

    StoredProgressAsOf(SignedSheets sheets, Rubrics rubrics, People people, Settings settings, PopulationFits fits) {
        this.sheets = sheets;
        this.rubrics = rubrics;
        this.people = people;
        this.settings = settings;
        this.fits = fits;
    }

    @Override
    public List<Known> of(UUID programmeId, UUID traineeId, Instant knownAt) {
        Function<UUID, Rubric> versions = rubrics.published().stream()
                .collect(Collectors.toMap(PublishedRubric::id, PublishedRubric::rubric))::get;
        ProgrammeSettings then = settings.of(programmeId, knownAt);
        List<SignedSheet> signed = sheets.ofTrainee(traineeId, knownAt).stream()
                .filter(sheet -> sheet.programmeId().equals(programmeId))
                .toList();
        return Procedures.ALL.stream()
                .map(procedure -> signed.stream()
                        .filter(sheet -> sheet.procedureCode().equals(procedure))
                        .toList())
                .map(ofProcedure -> ProcedureProgress.of(ofProcedure, versions, then))
                .flatMap(Optional::stream)
                .map(progress -> known(programmeId, traineeId, progress, knownAt))
                .toList();
    }

    private Known known(UUID programmeId, UUID traineeId, ProcedureProgress progress, Instant knownAt) {
        String procedure = progress.rubric().procedure();
        ProgrammeScores scores = ProgrammeScores.of(
                sheets.ofProgramme(programmeId, procedure, knownAt), people.priorExperience(procedure, knownAt));
        Optional<StoredFit.Known> stored = fits.known(programmeId, procedure, scores, knownAt);
        StoredFit fit = stored.map(StoredFit.Known::fit).orElseGet(() -> PopulationFits.fitted(scores, knownAt));
        return new Known(
                progress,
                FittedCurves.curve(traineeId, progress, scores, scores.until(), fit),
                stored.map(StoredFit.Known::id).orElse(null));
    }
}
