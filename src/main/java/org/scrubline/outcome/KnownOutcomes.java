package org.scrubline.outcome;

import java.time.Instant;
import java.util.Collection;
import java.util.Set;
import java.util.UUID;

/** What was known of outcomes at an instant; whoever asks has settled who may read it. */
public interface KnownOutcomes {

    /** Of these cases, those with a visit in the window of month 3 as it had been entered by then. */
    Set<UUID> atMonthThree(Collection<UUID> cases, Instant knownAt);
}
