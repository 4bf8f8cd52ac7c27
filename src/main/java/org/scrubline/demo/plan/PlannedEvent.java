package org.scrubline.demo.plan;

import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.TakeoverReason;

/**
 * An event of a case.
 *
 * @param code of the event catalogue
 * @param reason of a takeover, null for any other event
 */
public record PlannedEvent(
        String code, String step, @Nullable TakeoverReason reason, String action) {}
