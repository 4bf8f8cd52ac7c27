package org.scrubline.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.check.CheckResult;

/**
 * A check of the evidence somebody asked for.
 *
 * @param leaves how many there were when it was asked for
 * @param done how many of them it has read
 * @param finishedAt null until it is finished
 * @param result null until it is finished
 */
public record AskedCheck(
        Instant askedAt,
        long leaves,
        long done,
        @Nullable Instant finishedAt,
        @Nullable CheckResult result) {}
