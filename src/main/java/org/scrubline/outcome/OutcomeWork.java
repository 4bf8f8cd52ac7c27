package org.scrubline.outcome;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;

/**
 * Which visits are due. Whoever directs or administers a programme sees all of its cases, supervisors and trainees their
 * own; {@code NotFound} for others.
 */
public interface OutcomeWork {

    /**
     * What to list.
     *
     * @param programme null for the first of the person's
     * @param window null for all
     * @param page from 1; beyond the last is the last
     */
    record Wish(
            @Nullable UUID programme,
            WorkList.Show show,
            @Nullable FollowUp window,
            int page) {}

    WorkList read(SignedIn who, Wish wish);
}
