package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;

/** The sheet's own rules without a database, for tests that follow a sheet through thousands of taps. */
public final class EditorInMemory {

    private static final Instant AT = Instant.parse("2026-03-12T18:40:00Z");
    private static final UUID ANY = UUID.fromString("00000000-0000-4000-8000-000000000001");

    private EditorInMemory() {}

    /** A sheet nothing was said on. */
    public static Sheet blank(UUID id, Rubric rubric, boolean converted) {
        Sheet sheet = new Sheet(
                id,
                ANY,
                ANY,
                ANY,
                ANY,
                SheetState.OPEN,
                null,
                null,
                Map.of(),
                Set.of(),
                Map.of(),
                List.of(),
                "",
                "",
                AT,
                null,
                0,
                null);
        return converted ? sheet : StoredSheets.withoutConversion(rubric, sheet);
    }

    /** The sheet after a change as it would be read back, or why not. */
    public static Attempt<Sheet> apply(
            Rubric rubric, EventCatalogue catalogue, boolean converted, Sheet sheet, SheetChange change) {
        return SheetEditor.apply(rubric, catalogue, sheet, change, AT)
                .fold(
                        after -> Attempt.done(converted ? after : StoredSheets.withoutConversion(rubric, after)),
                        Attempt::refused);
    }
}
