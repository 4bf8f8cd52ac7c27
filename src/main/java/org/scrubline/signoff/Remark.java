package org.scrubline.signoff;

import java.time.Instant;
import java.util.UUID;

/** What a trainee wrote under a signed sheet; nobody can change or remove it. */
public record Remark(UUID id, String authorName, String body, Instant writtenAt) {}
