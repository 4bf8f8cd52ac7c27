package org.scrubline.platform;

import java.time.Instant;
import java.util.UUID;

/** Somebody logged in as this account re-entered a wrong password so often that it has to wait. */
public record RepeatedWrongPassword(UUID accountId, Instant at) {}
