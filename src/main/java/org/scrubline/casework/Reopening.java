package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;

/**
 * A signed sheet open again for its next version. The version before counts until this one is signed.
 *
 * @param versionNo the version being written, 2 or more
 * @param editorId who may write and sign it
 * @param reason why, as it will stand in what is signed
 */
public record Reopening(int versionNo, UUID editorId, String reason, Instant openedAt) {}
