package org.scrubline.casework;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.SheetStore.Draft;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredSheets implements Sheets {

    private final SheetStore sheets;
    private final SheetWriterStore writer;
    private final SheetTapStore taps;
    private final VersionDraftStore drafts;
    private final CaseStore locks;
    private final SheetDifferences differences;
    private final RemovalDates removals;
    private final Cases cases;
    private final Rubrics rubrics;
    private final EventCatalogue catalogue;
    private final Clock clock;

    StoredSheets(
            SheetStore sheets,
            SheetWriterStore writer,
            SheetTapStore taps,
            VersionDraftStore drafts,
            CaseStore locks,
            SheetDifferences differences,
            RemovalDates removals,
            Cases cases,
            Rubrics rubrics,
            RubricLibrary library,
            Clock clock) {
        this.sheets = sheets;
        this.writer = writer;
        this.taps = taps;
        this.drafts = drafts;
        this.locks = locks;
        this.differences = differences;
        this.removals = removals;
        this.cases = cases;
        this.rubrics = rubrics;
        this.catalogue = library.events();
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Sheet get(UUID id) {
        return sheets.find(id).map(this::complete).orElseThrow(NotFound::new);
    }

    /** The case first, like every change of a case, so that no two ever wait for each other. */
    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public Sheet hold(UUID id) {
        locks.hold(sheets.caseOf(id).orElseThrow(NotFound::new));
        writer.lock(id);
        return get(id);
    }

    @Override
    @Transactional(readOnly = true)
    public Sheet openFor(SignedIn scorer, UUID id) {
        return own(scorer, id);
    }

    @Override
    @Transactional(readOnly = true)
    public List<OpenSheet> toScore(UUID scorerId) {
        Instant now = clock.instant();
        return sheets.open(scorerId).stream().map(line -> line(line, now)).toList();
    }

    @Override
    public Attempt<Sheet> change(SignedIn scorer, UUID id, int onVersion, SheetChange change) {
        Sheet before = own(scorer, id);
        Rubric rubric = rubric(before.rubricVersionId());
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (before.lockVersion() != onVersion) {
            throw stale(rubric, before, change, now);
        }
        return SheetEditor.apply(rubric, catalogue, before, change, now)
                .fold(after -> Attempt.done(write(scorer, rubric, before, after, change, now)), Attempt::refused);
    }

    @Override
    @Transactional(readOnly = true)
    public List<Refusal> against(SignedIn scorer, UUID id, SheetChange change) {
        Sheet sheet = own(scorer, id);
        return SheetEditor.apply(rubric(sheet.rubricVersionId()), catalogue, sheet, change, clock.instant())
                .fold(after -> List.of(), reasons -> reasons);
    }

    @Override
    public Attempt<Sheet> tap(SignedIn scorer, UUID id, UUID tapId, int onVersion, SheetChange change) {
        writer.lock(id);
        Optional<Integer> made = taps.versionOf(id, tapId);
        if (made.isPresent()) {
            return Attempt.done(own(scorer, id).under(made.get()));
        }
        Attempt<Sheet> attempt = change(scorer, id, onVersion, change);
        if (attempt instanceof Attempt.Done<Sheet> done) {
            taps.add(id, tapId, done.value().lockVersion(), clock.instant());
        }
        return attempt;
    }

    @Override
    @Transactional(readOnly = true)
    public SheetReceipt receipt(SignedIn scorer, UUID id) {
        Sheet sheet = get(id);
        if (!sheet.editorId().equals(scorer.personId())) {
            throw new NotFound();
        }
        return new SheetReceipt(sheet, taps.ofSheet(id));
    }

    @Override
    public boolean markSigned(UUID id, int onVersion) {
        boolean signed = writer.markSigned(id, onVersion);
        if (signed) {
            drafts.delete(id);
        }
        return signed;
    }

    private Sheet write(SignedIn scorer, Rubric rubric, Sheet before, Sheet after, SheetChange change, Instant now) {
        if (after.equals(before)) {
            return before;
        }
        if (!writer.write(before, after, stepOfMeasure(rubric), now)) {
            throw stale(rubric, own(scorer, before.id()), change, now);
        }
        return own(scorer, before.id());
    }

    /** Both versions are shown as what the stored sheet is and what it would be with the change in it. */
    private StaleData stale(Rubric rubric, Sheet stored, SheetChange change, Instant now) {
        List<StaleData.Line> lines = SheetEditor.apply(rubric, catalogue, stored, change, now)
                .fold(yours -> differences.between(rubric, catalogue, yours, stored), reasons -> List.of());
        return new StaleData("/sheets/" + stored.id(), lines);
    }

    private Sheet own(SignedIn scorer, UUID id) {
        return sheets.find(id)
                .filter(draft -> draft.sheet().state().editable())
                .filter(draft -> draft.sheet().editorId().equals(scorer.personId()))
                .filter(draft -> scorer.has(Role.SUPERVISOR, draft.programmeId()))
                .map(this::complete)
                .orElseThrow(NotFound::new);
    }

    /** A step that belongs to the case only after a conversion is not part of it until there was one. */
    private Sheet complete(Draft draft) {
        Sheet sheet = draft.sheet();
        if (draft.converted()) {
            return sheet;
        }
        return withoutConversion(rubric(sheet.rubricVersionId()), sheet);
    }

    static Sheet withoutConversion(Rubric rubric, Sheet sheet) {
        Map<String, StepState> steps = new LinkedHashMap<>(sheet.steps());
        rubric.steps().stream()
                .filter(Step::onlyWhenConverted)
                .forEach(step -> steps.putIfAbsent(step.code(), new StepState.NotPart()));
        return sheet.with(steps);
    }

    private OpenSheet line(SheetStore.OpenLine line, Instant now) {
        SurgicalCase surgicalCase = cases.get(line.caseId());
        List<Step> steps = rubric(line.rubricVersionId()).steps();
        long said = steps.stream()
                .filter(step -> line.said().contains(step.code()) || (step.onlyWhenConverted() && !line.converted()))
                .count();
        Instant ended = surgicalCase.endedAt();
        Duration age = ended == null ? Duration.ZERO : Duration.between(ended, now);
        return new OpenSheet(
                line.sheetId(),
                surgicalCase,
                line.traineeName(),
                age,
                (int) said,
                steps.size(),
                line.touchedAt(),
                removals.announced(surgicalCase.programmeId(), line.traineeId(), line.touchedAt(), line.toldAt())
                        .orElse(null),
                line.versionNo());
    }

    private Rubric rubric(UUID version) {
        return rubrics.byId(version).orElseThrow(NotFound::new).rubric();
    }

    static Map<String, String> stepOfMeasure(Rubric rubric) {
        Map<String, String> stepOfMeasure = new LinkedHashMap<>();
        for (Step step : rubric.steps()) {
            step.measures().forEach(measure -> stepOfMeasure.put(measure.code(), step.code()));
        }
        return stepOfMeasure;
    }
}
