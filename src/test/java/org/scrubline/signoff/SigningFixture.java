package org.scrubline.signoff;

import java.time.Instant;
import java.util.UUID;
import org.scrubline.casework.Part;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Supervision;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Sheets ready to be signed. */
@Component
public class SigningFixture {

    private final SheetFixture cases;
    private final Sheets sheets;
    private final Rubrics rubrics;
    private final Signing signing;

    SigningFixture(SheetFixture cases, Sheets sheets, Rubrics rubrics, Signing signing) {
        this.cases = cases;
        this.sheets = sheets;
        this.rubrics = rubrics;
        this.signing = signing;
    }

    /** An open sheet about a trabeculectomy with nothing said on it. */
    public UUID blank(Theatre theatre, Instant endedAt) {
        return cases.open(theatre, Procedures.TRAB_FORNIX, endedAt);
    }

    /** An open sheet with the role confirmed and every step at level 4. */
    public UUID complete(Theatre theatre, Instant endedAt) {
        UUID id = blank(theatre, endedAt);
        confirmRole(theatre, id);
        Sheet sheet = read(theatre, id);
        theatre.organisation().in(() -> rubrics.byId(sheet.rubricVersionId()).orElseThrow()).rubric().steps().stream()
                .filter(step -> sheet.step(step.code()) instanceof StepState.Blank)
                .forEach(step -> change(theatre, id, new SheetChange.SetStep(step.code(), new StepState.Scored(4))));
        return id;
    }

    public void confirmRole(Theatre theatre, UUID id) {
        change(theatre, id, new SheetChange.ConfirmRole(Part.WHOLE_CASE, Supervision.SCRUBBED));
    }

    public void change(Theatre theatre, UUID id, SheetChange change) {
        theatre.organisation()
                .in(() -> sheets.change(
                                theatre.supervisor(), id, read(theatre, id).lockVersion(), change)
                        .orThrow());
    }

    public Sheet read(Theatre theatre, UUID id) {
        return theatre.organisation().in(() -> sheets.get(id));
    }

    public SigningPreview preview(Theatre theatre, UUID id) {
        return theatre.organisation().in(() -> signing.preview(theatre.supervisor(), id));
    }

    /** The record of a complete sheet signed now. */
    public SignedSheet signed(Theatre theatre, Instant endedAt) {
        UUID id = complete(theatre, endedAt);
        return theatre.organisation()
                .in(() ->
                        signing.signWithoutCredential(theatre.supervisor(), id).orThrow());
    }
}
