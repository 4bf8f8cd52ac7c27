package org.scrubline.ledger.check;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a check came to.
 *
 * @param tenant the organisation
 * @param leaves read
 * @param records of those that are a signed version of a sheet
 * @param checkpoints stored ones, each compared with the leaves before it
 * @param newestCheckpoint leaves the newest stored checkpoint covers; 0 when there is none
 * @param signedWith key of the newest checkpoint; null when there is none or nobody knows it
 * @param keyGiven whether that key was known from outside the evidence
 * @param held checkpoints held outside that were compared
 * @param unsealed entries of the audit trail after its newest seal, about which nothing can be said
 * @param removals records removed after their term
 * @param found the first findings
 * @param problems how many there are in all
 */
public record CheckResult(
        UUID tenant,
        long leaves,
        long records,
        long checkpoints,
        long newestCheckpoint,
        @Nullable String signedWith,
        boolean keyGiven,
        int held,
        long unsealed,
        List<Removal> removals,
        List<Finding> found,
        long problems) {

    /** The result of an earlier release says nothing of removals. */
    public CheckResult {
        removals = List.copyOf(Objects.requireNonNullElse(removals, List.of()));
        found = List.copyOf(found);
    }

    public boolean sound() {
        return problems == 0;
    }
}
