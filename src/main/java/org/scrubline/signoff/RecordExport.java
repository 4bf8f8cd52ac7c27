package org.scrubline.signoff;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;

/** Every signed version of a programme in short, for a table outside. */
public interface RecordExport {

    /**
     * A signed version: what was signed as it was signed, and what others signed about it.
     *
     * @param voided the whole record is void and in no number
     * @param countersigned by whom and when; null when nobody did
     * @param acknowledgedAt when the trainee signed having read it; null when not
     */
    record Line(
            UUID id,
            UUID sheet,
            int version,
            String reference,
            String procedure,
            String rubricVersion,
            Instant caseEndedAt,
            String band,
            String trainee,
            String part,
            String supervision,
            String verdict,
            boolean late,
            Signature signed,
            boolean voided,
            RecordMarks marks,
            @Nullable Signature countersigned,
            @Nullable Instant acknowledgedAt,
            String contentHash) {}

    /** Printed name, role, meaning and time of a signature; the zone is that of the site's clocks. */
    record Signature(String name, String role, String meaning, Instant at, ZoneId zone) {}

    /**
     * Oldest case first.
     *
     * @throws org.scrubline.platform.NotFound for whoever does not direct the programme
     */
    void each(SignedIn director, UUID programme, Consumer<Line> line);
}
