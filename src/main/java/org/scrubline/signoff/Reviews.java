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
    private final SignedSheetQueries signed;
    private final Cases cases;
    private final Rubrics rubrics;
    private final ContentWriter writer;

    Reviews(Sheets sheets, SignedSheetQueries signed, Cases cases, Rubrics rubrics, ContentWriter writer) {
        this.sheets = sheets;
        this.signed = signed;
        this.cases = cases;
        this.rubrics = rubrics;
        this.writer = writer;
    }

    /**
     * The sheet this person may write on, or signed last.
     *
     * @throws NotFound for anyone else, who is not told that it exists
     */
    Sheet own(SignedIn scorer, UUID sheetId) {
        Sheet sheet = sheets.get(sheetId);
        if (sheet.state() == SheetState.VOID || !isTheirs(scorer, sheet)) {
            throw new NotFound();
        }
        return sheet;
    }

    private boolean isTheirs(SignedIn who, Sheet sheet) {
        return sheet.editorId().equals(who.personId())
                || (sheet.state() == SheetState.SIGNED
                        && signed.newest(sheet.id())
                                .filter(newest -> newest.signerId().equals(who.personId()))
                                .isPresent());
    }

    /** The same, kept from changing until the transaction ends. */
    Review held(SignedIn scorer, UUID sheetId) {
        sheets.hold(sheetId);
        return of(scorer, sheetId);
    }

    Review of(SignedIn scorer, UUID sheetId) {
        Sheet sheet = own(scorer, sheetId);
        SurgicalCase operation = cases.get(sheet.caseId());
        PublishedRubric published = rubrics.byId(sheet.rubricVersionId()).orElseThrow(NotFound::new);
        return new Review(sheet, operation, published, writer.write(scorer, operation, sheet, published));
    }
}
