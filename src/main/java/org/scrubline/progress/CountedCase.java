package org.scrubline.progress;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.scrubline.signoff.SignedSheet;

/**
 * A case in which the trainee operated, with every signed sheet about it.
 *
 * @param sheets at least one, first signature first; two supervisors may have scored the same case
 */
public record CountedCase(UUID id, Instant endedAt, List<SignedSheet> sheets) {

    public CountedCase {
        sheets = List.copyOf(sheets);
    }

    /**
     * Whether any of the sheets records a critical event. The worst of the sheets counts: what one supervisor saw
     * happen is not undone by another who did not see it.
     */
    public boolean criticalEvent() {
        return sheets.stream().anyMatch(SignedSheet::criticalFailure);
    }

    /** Whether any of the sheets awaits its countersignature; it counts meanwhile, toward no gate. */
    public boolean awaitingCountersignature() {
        return sheets.stream().anyMatch(sheet -> sheet.marks().awaitingCountersignature());
    }

    /** Whether the trainee contests any of the sheets and nothing is decided; it counts meanwhile. */
    public boolean contested() {
        return sheets.stream().anyMatch(sheet -> sheet.marks().contested());
    }
}
