package org.scrubline.training;

import java.time.Instant;
import java.util.UUID;

/**
 * What a supervisor said about practice a trainee entered.
 *
 * @param confirmed whether it was signed off
 * @param said why not, or a remark; may be empty when it was
 */
public record TrainingAnswer(UUID by, String name, boolean confirmed, String said, Instant at) {}
