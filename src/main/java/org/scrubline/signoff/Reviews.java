package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Reads sheets for their own scorer to review. */
@Component
class Reviews {

    private final Sheets sheets;
    private final Cases cases;
    private final Rubrics rubrics;
    private final ContentWriter writer;

    Reviews(Sheets sheets, Cases cases, Rubrics rubrics, ContentWriter writer) {
        this.sheets = sheets;
        this.cases = cases;
        this.rubrics = rubrics;
        this.writer = writer;
    }

    /**
     * The scorer's own sheet, open or signed.
     *
     * @throws NotFound for anyone else, who is not told that it exists
     */
    Sheet own(SignedIn scorer, UUID sheetId) {
        Sheet sheet = sheets.get(sheetId);
        if (!sheet.scorerId().equals(scorer.personId()) || sheet.state() == SheetState.VOID) {
            throw new NotFound();
        }
        return sheet;
    }

    Review of(SignedIn scorer, UUID sheetId) {
        Sheet sheet = own(scorer, sheetId);
        SurgicalCase operation = cases.get(sheet.caseId());
        PublishedRubric published = rubrics.byId(sheet.rubricVersionId()).orElseThrow(NotFound::new);
        return new Review(sheet, operation, published, writer.write(scorer, operation, sheet, published));
    }
}
