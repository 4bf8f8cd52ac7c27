package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;

/**
 * A note of a trainee for themselves.
 *
 * @param procedure code of the procedure it is about; empty for training as a whole
 * @param step code of the step it is about; empty for none in particular
 */
public record Reflection(UUID id, String procedure, String step, String note, Instant writtenAt) {}
