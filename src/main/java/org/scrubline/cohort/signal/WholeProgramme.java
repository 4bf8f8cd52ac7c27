package org.scrubline.cohort.signal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.scrubline.scoring.curve.CaseContext;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.scoring.curve.Flag;
import org.scrubline.scoring.curve.ModelSettings;
import org.scrubline.scoring.curve.ObservedScore;
import org.scrubline.scoring.curve.PopulationFit;
import org.scrubline.scoring.curve.ProcedureStandard;
import org.scrubline.scoring.curve.RunningPath;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.ScorerSignals;
import org.scrubline.scoring.curve.TraineeSignals;

/**
 * The competency model over a set of sheets: those of one procedure, or all of a programme together. Reading all
 * procedures as one treats a case of any of them as practice for every other; that is too crude for a decision and enough
 * for a prompt, and it doubles the cases a course can be seen in.
 */
final class WholeProgramme {

    private static final int LEVELS = 5;

    private final ScoreTable table;
    private final PopulationFit fit;
    private final ProcedureStandard standard;

    private WholeProgramme(ScoreTable table, ProcedureStandard standard) {
        this.table = table;
        this.standard = standard;
        this.fit = new CompetencyModel(ModelSettings.standard(LEVELS)).fit(table);
    }

    /** All procedures together. */
    static WholeProgramme of(ProgrammeRecord programme) {
        List<ObservedScore> scores = scores(programme, form -> true);
        return new WholeProgramme(ScoreTable.of(LEVELS, List.of(), scores), ProcedureStandard.usual(anyStep(scores)));
    }

    /** One procedure. */
    static WholeProgramme of(ProgrammeRecord programme, String procedure) {
        List<ObservedScore> scores = scores(programme, form -> form.procedure().equals(procedure));
        ProcedureStandard usual = ProcedureStandard.usual(programme.critical().getOrDefault(procedure, List.of()));
        return new WholeProgramme(
                ScoreTable.of(LEVELS, List.of(), scores),
                new ProcedureStandard(
                        usual.criticalSteps(),
                        usual.curveLevel(),
                        usual.stepChance(),
                        usual.assurance(),
                        usual.levels(),
                        programme.limits().minimums(),
                        programme.forms().stream()
                                .filter(form -> !form.settled())
                                .map(SignedForm::id)
                                .collect(Collectors.toSet())));
    }

    /** The standard asks for a step; the level over all steps does not depend on which. */
    private static List<String> anyStep(List<ObservedScore> scores) {
        return scores.stream().map(ObservedScore::step).sorted().limit(1).toList();
    }

    private static List<ObservedScore> scores(ProgrammeRecord programme, Predicate<SignedForm> which) {
        List<ObservedScore> scores = new ArrayList<>();
        for (String trainee : programme.trainees()) {
            List<SignedForm> own = programme.about(trainee).stream()
                    .filter(which)
                    .sorted(Comparator.comparing(SignedForm::endedAt)
                            .thenComparing(SignedForm::caseId)
                            .thenComparing(SignedForm::id))
                    .toList();
            int done = programme.earlier().getOrDefault(trainee, 0);
            SignedForm before = null;
            CaseContext context = null;
            for (SignedForm form : own) {
                if (context == null || before == null || !before.caseId().equals(form.caseId())) {
                    context = CaseContext.of(
                            form.caseId(),
                            form.endedAt(),
                            done++,
                            form.band(),
                            before == null ? null : before.endedAt());
                }
                add(scores, form, context);
                before = form;
            }
        }
        return scores;
    }

    private static void add(List<ObservedScore> scores, SignedForm form, CaseContext context) {
        form.levels()
                .forEach((step, level) ->
                        scores.add(new ObservedScore(form.id(), form.trainee(), form.scorer(), context, step, level)));
    }

    CompetencyCurve curve(String trainee) {
        return CompetencyModel.smooth(fit, table, trainee, standard);
    }

    /** What the engine notices about a trainee, case by case as it was known then. */
    List<Flag> flags(String trainee, CompetencyCurve curve) {
        return TraineeSignals.of(table, curve, RunningPath.of(fit, table, trainee));
    }

    /** What the engine notices about those who scored. */
    List<Flag> scorerFlags() {
        return ScorerSignals.of(fit, table);
    }

    /**
     * What turns a level of an ordinary day into one over all days, so that its logistic is the share of days: the spread
     * between days flattens the chance (the usual logistic-normal approximation, factor .346 = (16 √3 / 15 π)², from
     * memory).
     */
    double overDays() {
        double spread = fit.psi().assessmentSd();
        return 1 / Math.sqrt(1 + 0.346 * spread * spread);
    }
}
