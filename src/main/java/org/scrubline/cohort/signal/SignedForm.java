package org.scrubline.cohort.signal;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Set;
import org.scrubline.scoring.curve.CaseBand;

/**
 * One signed sheet that counts, as the rules read it: what was seen, by whom and when, and nothing else.
 *
 * @param id of the signed sheet, so that a number can open it
 * @param band complexity of the case
 * @param levels 1 to 5 by step code, scored steps only
 * @param settled false while it awaits a countersignature; it counts meanwhile, toward no gate
 */
public record SignedForm(
        String id,
        String caseId,
        String trainee,
        String scorer,
        String procedure,
        Instant endedAt,
        Instant signedAt,
        CaseBand band,
        Map<String, Integer> levels,
        boolean settled) {

    /** With fewer scored steps one level for all of them says little. */
    private static final int STEPS_TO_DIFFER = 8;

    public SignedForm {
        levels = Map.copyOf(levels);
    }

    Duration delay() {
        return Duration.between(endedAt, signedAt);
    }

    /** Enough scored steps to see whether they differ. */
    boolean canDiffer() {
        return levels.size() >= STEPS_TO_DIFFER;
    }

    boolean oneLevel() {
        return Set.copyOf(levels.values()).size() == 1;
    }
}
