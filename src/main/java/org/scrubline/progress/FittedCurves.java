package org.scrubline.progress;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.Estimation;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class FittedCurves implements Curves {

    private static final double PERCENT = 100;

    private final SignedSheets sheets;
    private final People people;
    private final PopulationFits fits;

    FittedCurves(SignedSheets sheets, People people, PopulationFits fits) {
        this.sheets = sheets;
        this.people = people;
        this.fits = fits;
    }

    @Override
    @Transactional
    public TraineeCurve of(UUID traineeId, ProcedureProgress progress) {
        String procedure = progress.rubric().procedure();
        List<SignedSheet> counted = progress.evidence().sheets();
        UUID programme = counted.get(counted.size() - 1).programmeId();
        Map<UUID, Integer> earlier = people.priorExperience(procedure);
        Supplier<ProgrammeScores> all = () -> ProgrammeScores.of(sheets.ofProgramme(programme, procedure), earlier);
        StoredFit fit = fits.current(programme, procedure, all);
        SignedSheets.Scored scored = sheets.scored(programme, procedure);
        List<SignedSheet> own = counted.stream()
                .filter(sheet -> sheet.programmeId().equals(programme))
                .toList();
        ProgrammeScores scores = ProgrammeScores.ofTrainee(traineeId, own, scored.steps(), earlier);
        return curve(
                traineeId, progress, scores.table().hasOneLevelSupervisor() ? all.get() : scores, scored.until(), fit);
    }

    /**
     * The curve these scores and this fit give. Given a fit, a curve rests on the trainee's own scores; those of others may
     * be left out, but where a supervisor has given one extreme level only.
     *
     * @param until the newest signature in the programme
     */
    static TraineeCurve curve(
            UUID traineeId, ProcedureProgress progress, ProgrammeScores scores, Instant until, StoredFit stored) {
        ProcedureStandard standard = standard(progress, scores.of(traineeId));
        CompetencyCurve model = CompetencyModel.smooth(stored.fit(), scores.table(), traineeId.toString(), standard);
        return new TraineeCurve(
                model,
                TraineeCurve.points(
                        scores.of(traineeId), model, progress.settings().gapShown()),
                until,
                stored.dataUntil(),
                stored.sheets(),
                stored.fit().estimation() == Estimation.ALL,
                standard.stepChance(),
                CompetencyModel.gaps(stored.fit(), scores.table(), traineeId.toString(), standard));
    }

    /** The usual standards with the programme's own minimums; sheets awaiting a countersignature count toward none. */
    private static ProcedureStandard standard(ProcedureProgress progress, Evidence evidence) {
        ProcedureStandard usual = ProcedureStandard.usual(critical(progress));
        Set<String> pending = evidence.sheets().stream()
                .filter(sheet -> sheet.marks().awaitingCountersignature())
                .map(sheet -> sheet.id().toString())
                .collect(Collectors.toSet());
        return new ProcedureStandard(
                usual.criticalSteps(),
                usual.curveLevel(),
                usual.stepChance(),
                usual.assurance(),
                usual.levels(),
                minimums(progress.settings()),
                pending);
    }

    private static ProcedureStandard.Minimums minimums(ProgrammeSettings settings) {
        return new ProcedureStandard.Minimums(
                settings.shownCases(),
                settings.shownScorers(),
                settings.shownStepScores(),
                settings.shownIndex(),
                ProcedureStandard.Minimums.USUAL.reportableIndex(),
                settings.supportsCases(),
                settings.supportsScorers(),
                settings.mostByOne() / PERCENT);
    }

    private static List<String> critical(ProcedureProgress progress) {
        return progress.steps().stream()
                .filter(StepProgress::gated)
                .map(step -> step.step().code())
                .toList();
    }
}
