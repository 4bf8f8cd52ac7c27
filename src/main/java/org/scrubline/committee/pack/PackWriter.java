package org.scrubline.committee.pack;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.pack.PackContent.ProcedureLine;
import org.scrubline.committee.pack.PackContent.RecordLine;
import org.scrubline.committee.pack.PackContent.RubricLine;
import org.scrubline.committee.pack.PackContent.ScorerLine;
import org.scrubline.committee.pack.PackContent.TrainingLine;
import org.scrubline.outcome.KnownOutcomes;
import org.scrubline.people.Introductions;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.Settings;
import org.scrubline.progress.ProgressAsOf;
import org.scrubline.progress.ProgressAsOf.Known;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.signoff.ContestOutcome;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SignedSheets;
import org.scrubline.training.TrainingRecords;
import org.springframework.stereotype.Component;

/** Writes a pack from the records as they were known at the cut-off; the same question gives the same text at any time. */
@Component
public class PackWriter {

    /** Message key of the caution that goes with a procedure of which there is too little. */
    public static final String SMALL_SAMPLE = "components.caution.small-sample";

    private static final List<String> USUAL = List.of("components.caution.curve", "components.caution.clinical");
    private static final String ADJUSTED = "components.caution.adjusted";

    private final SignedSheets sheets;
    private final ProgressAsOf progress;
    private final KnownOutcomes outcomes;
    private final Rubrics rubrics;
    private final Settings settings;
    private final TrainingRecords records;
    private final Introductions introductions;

    PackWriter(
            SignedSheets sheets,
            ProgressAsOf progress,
            KnownOutcomes outcomes,
            Rubrics rubrics,
            Settings settings,
            TrainingRecords records,
            Introductions introductions) {
        this.sheets = sheets;
        this.progress = progress;
        this.outcomes = outcomes;
        this.rubrics = rubrics;
        this.settings = settings;
        this.records = records;
        this.introductions = introductions;
    }

    /** What a pack is about. */
    public record Subject(Named organisation, Named programme, UUID meeting, Named trainee) {}

    /** The pack as of the cut-off, in the reader's transaction. */
    public PackContent write(Subject subject, Instant cutOff) {
        return write(subject, cutOff, PackContent.SCHEMA);
    }

    /** The same in the form it was once frozen in. */
    public PackContent write(Subject subject, Instant cutOff, String schema) {
        UUID programme = subject.programme().id();
        UUID trainee = subject.trainee().id();
        List<SignedSheet> all = sheets.ofTraineeWithVoid(trainee, cutOff).stream()
                .filter(sheet -> sheet.programmeId().equals(programme))
                .toList();
        Set<UUID> standing =
                sheets.ofTrainee(trainee, cutOff).stream().map(SignedSheet::id).collect(Collectors.toSet());
        List<Known> known = progress.of(programme, trainee, cutOff);
        List<ProcedureLine> procedures = known.stream().map(ProcedureLines::of).toList();
        Set<UUID> followed = schema.equals(PackContent.FIRST)
                ? Set.of()
                : outcomes.atMonthThree(
                        all.stream().map(SignedSheet::caseId).distinct().toList(), cutOff);
        return new PackContent(
                schema,
                subject.organisation(),
                subject.programme(),
                subject.meeting(),
                subject.trainee(),
                cutOff,
                CompetencyModel.VERSION,
                changed(settings.of(programme, cutOff)),
                rubrics(all),
                procedures,
                Proposals.of(known, followed),
                all.stream().map(sheet -> line(sheet, standing)).toList(),
                scorers(known),
                cautions(procedures),
                schema.equals(PackContent.FIRST) ? null : training(programme, trainee, cutOff));
    }

    private List<TrainingLine> training(UUID programme, UUID trainee, Instant cutOff) {
        boolean introduced = introductions.of(programme, cutOff).containsKey(trainee);
        return new TrainingChecklist(records.of(programme, trainee, cutOff), introduced).lines();
    }

    private static Map<String, Integer> changed(ProgrammeSettings settings) {
        Map<String, Integer> changed = new TreeMap<>();
        settings.changed().forEach((key, value) -> changed.put(key.name(), value));
        return changed;
    }

    private List<RubricLine> rubrics(List<SignedSheet> all) {
        return all.stream()
                .map(SignedSheet::rubricVersionId)
                .distinct()
                .map(id -> rubrics.byId(id).orElseThrow())
                .sorted(Comparator.comparing(
                                (PublishedRubric one) -> one.rubric().procedure())
                        .thenComparing(one -> one.rubric().version())
                        .thenComparing(PublishedRubric::id))
                .map(one -> new RubricLine(
                        one.id(),
                        one.rubric().procedure(),
                        one.rubric().title(),
                        one.rubric().version(),
                        one.contentHash()))
                .toList();
    }

    private static RecordLine line(SignedSheet sheet, Set<UUID> standing) {
        return new RecordLine(
                sheet.id(),
                sheet.sheetId(),
                sheet.versionNo(),
                sheet.contentHash(),
                sheet.procedureCode(),
                sheet.rubricVersionId(),
                sheet.caseId(),
                sheet.caseEndedAt(),
                sheet.signedAt(),
                sheet.signerId(),
                sheet.signerName(),
                sheet.band(),
                sheet.confirmedPart(),
                sheet.verdict(),
                sheet.late(),
                sheet.marks().contested(),
                name(sheet.marks().outcome()),
                sheet.marks().awaitingCountersignature(),
                !standing.contains(sheet.id()));
    }

    private static @Nullable String name(@Nullable ContestOutcome outcome) {
        return outcome == null ? null : outcome.name();
    }

    private static List<ScorerLine> scorers(List<Known> known) {
        List<SignedSheet> counted = known.stream()
                .flatMap(one -> one.progress().evidence().sheets().stream())
                .toList();
        Map<UUID, String> names = new LinkedHashMap<>();
        counted.forEach(sheet -> names.putIfAbsent(sheet.signerId(), sheet.signerName()));
        Map<UUID, Long> records =
                counted.stream().collect(Collectors.groupingBy(SignedSheet::signerId, Collectors.counting()));
        return names.entrySet().stream()
                .map(one -> new ScorerLine(
                        one.getKey(),
                        one.getValue(),
                        records.getOrDefault(one.getKey(), 0L).intValue(),
                        counted.size()))
                .sorted(Comparator.comparingInt(ScorerLine::records)
                        .reversed()
                        .thenComparing(ScorerLine::name)
                        .thenComparing(ScorerLine::id))
                .toList();
    }

    private static List<String> cautions(List<ProcedureLine> procedures) {
        List<String> cautions = new ArrayList<>(USUAL);
        if (procedures.isEmpty()
                || procedures.stream()
                        .anyMatch(
                                one -> !one.shown().isEmpty() || !one.supports().isEmpty())) {
            cautions.add(SMALL_SAMPLE);
        }
        if (procedures.stream().anyMatch(one -> one.model() != null)) {
            cautions.add(ADJUSTED);
        }
        return cautions;
    }
}
