package org.scrubline.removal;

import java.time.Instant;
import java.util.UUID;

/**
 * A trainee whose records may be removed.
 *
 * @param since end of training, or the newest signature when that is later
 * @param records signed versions
 * @param held under a hold, so that nothing may go
 */
public record EndedTerm(UUID trainee, String name, Instant since, int records, boolean held) {}
