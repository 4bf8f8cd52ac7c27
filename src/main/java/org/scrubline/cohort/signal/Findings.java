package org.scrubline.cohort.signal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.Flag;
import org.scrubline.scoring.curve.Readiness;
import org.scrubline.scoring.curve.Support;

/**
 * Every signal of a programme and how each supervisor scores. A pure function of the record.
 *
 * @param trainees signals about trainees, in the order of their ids
 * @param scorers signals about ways of scoring, in the order of their ids
 * @param figures one for each supervisor who signed, in the order of their ids
 */
public record Findings(List<Signal> trainees, List<Signal> scorers, List<ScorerFigures> figures) {

    public Findings {
        trainees = List.copyOf(trainees);
        scorers = List.copyOf(scorers);
        figures = List.copyOf(figures);
    }

    /** Reads a programme; takes the time of a few fits of the model. */
    public static Findings of(ProgrammeRecord programme) {
        if (programme.forms().isEmpty()) {
            return new Findings(withoutForms(programme), List.of(), List.of());
        }
        WholeProgramme whole = WholeProgramme.of(programme);
        AdjustedLevels levels = AdjustedLevels.of(programme.forms());
        List<ScorerFigures> figures = programme.scorers().stream()
                .map(scorer -> ScorerFigures.of(programme, levels, scorer))
                .toList();
        List<Flag> flags = whole.scorerFlags();
        return new Findings(
                trainees(programme, whole),
                figures.stream()
                        .flatMap(one -> ScorerRules.of(one, flags, programme).stream())
                        .toList(),
                figures);
    }

    /** Before the first signature only the unscored can be noticed. */
    private static List<Signal> withoutForms(ProgrammeRecord programme) {
        return programme.trainees().stream()
                .map(trainee -> new TraineeFacts(
                        trainee,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        programme.ended(trainee),
                        programme.never(trainee)))
                .map(EvidenceRules::unscored)
                .flatMap(Optional::stream)
                .toList();
    }

    private static List<Signal> trainees(ProgrammeRecord programme, WholeProgramme whole) {
        ProgrammeRecord.Limits limits = programme.limits();
        double median = EvidenceRules.median(programme);
        Map<String, WholeProgramme> procedures = procedures(programme);
        List<Signal> found = new ArrayList<>();
        for (String trainee : programme.trainees()) {
            TraineeFacts facts = TraineeFacts.of(programme, whole, trainee);
            Stream.of(
                            CourseRules.plateau(facts),
                            CourseRules.regression(facts, limits.gap()),
                            CourseRules.longBreak(facts, limits.gap()),
                            CourseRules.stepsBehind(facts),
                            EvidenceRules.fewCases(facts, median, limits.gap()),
                            EvidenceRules.scoredLate(facts, limits.late()),
                            EvidenceRules.unscored(facts),
                            EvidenceRules.insufficient(facts, limits.minimums()))
                    .flatMap(Optional::stream)
                    .forEach(found::add);
            procedures.forEach((procedure, one) ->
                    supported(facts, procedure, one.curve(trainee)).ifPresent(found::add));
        }
        return found;
    }

    /** Fits of the procedures in which somebody has enough cases for a proposal. */
    private static Map<String, WholeProgramme> procedures(ProgrammeRecord programme) {
        Map<String, WholeProgramme> fits = new TreeMap<>();
        programme.critical().keySet().stream()
                .filter(procedure -> programme.trainees().stream()
                        .anyMatch(trainee -> cases(programme, trainee, procedure)
                                >= programme.limits().minimums().supportCases()))
                .forEach(procedure -> fits.put(procedure, WholeProgramme.of(programme, procedure)));
        return fits;
    }

    private static long cases(ProgrammeRecord programme, String trainee, String procedure) {
        return programme.about(trainee).stream()
                .filter(form -> form.procedure().equals(procedure))
                .map(SignedForm::caseId)
                .distinct()
                .count();
    }

    /** The engine's own answer for the last of its standards. Figures: chance, assurance. */
    private static Optional<Signal> supported(TraineeFacts facts, String procedure, CompetencyCurve curve) {
        Readiness highest = curve.readiness().get(curve.readiness().size() - 1);
        return highest.support() == Support.SUPPORTS
                ? Optional.of(new Signal(
                        Signal.Kind.SUPPORTED,
                        facts.trainee(),
                        procedure,
                        List.of(),
                        List.of(highest.chance(), highest.assurance()),
                        Signal.ids(facts.forms().stream()
                                .filter(form -> form.procedure().equals(procedure))
                                .toList())))
                : Optional.empty();
    }
}
