package org.scrubline.casework;

import static java.util.Objects.requireNonNull;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import org.scrubline.platform.NotFound;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(propagation = Propagation.MANDATORY)
class StoredSheetVersions implements SheetVersions {

    private final Sheets sheets;
    private final VersionDraftStore drafts;
    private final SheetWriterStore writer;
    private final Rubrics rubrics;
    private final Clock clock;

    StoredSheetVersions(
            Sheets sheets, VersionDraftStore drafts, SheetWriterStore writer, Rubrics rubrics, Clock clock) {
        this.sheets = sheets;
        this.drafts = drafts;
        this.writer = writer;
        this.rubrics = rubrics;
        this.clock = clock;
    }

    @Override
    public void reopen(Sheet counting, Reopening reopening) {
        require(drafts.move(counting.id(), SheetState.SIGNED, SheetState.REOPENED), counting);
        drafts.insert(counting.id(), reopening, requireNonNull(counting.confirmedPart()));
        refill(counting);
    }

    @Override
    public void drop(Sheet counting) {
        refill(counting);
        require(drafts.move(counting.id(), SheetState.REOPENED, SheetState.SIGNED), counting);
        drafts.delete(counting.id());
    }

    @Override
    public void markVoid(Sheet sheet) {
        require(drafts.move(sheet.id(), sheet.state(), SheetState.VOID), sheet);
        drafts.delete(sheet.id());
    }

    /** Makes the draft say what the counting version says. */
    private void refill(Sheet counting) {
        Rubric rubric = rubrics.byId(counting.rubricVersionId())
                .orElseThrow(NotFound::new)
                .rubric();
        Sheet before = sheets.get(counting.id());
        boolean written = writer.write(
                before,
                counting,
                StoredSheets.stepOfMeasure(rubric),
                clock.instant().truncatedTo(ChronoUnit.MICROS));
        require(written, counting);
    }

    private static void require(boolean moved, Sheet sheet) {
        if (!moved) {
            throw new IllegalStateException("sheet " + sheet.id() + " is not held in state " + sheet.state());
        }
    }
}
