package org.scrubline.audit;

import java.time.Instant;
import java.util.UUID;

/** How many entries there are with a sequence above {@code after} and up to {@code last}, and the hash of them all. */
record AuditSeal(UUID id, long after, long last, long entries, String rowsHash, Instant sealedAt) {}
