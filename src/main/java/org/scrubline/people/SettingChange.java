package org.scrubline.people;

import java.time.Instant;
import java.util.UUID;

/** One change of one setting; {@code changedBy} is the printed name now. */
public record SettingChange(UUID id, SettingKey key, int value, String reason, String changedBy, Instant changedAt) {}
