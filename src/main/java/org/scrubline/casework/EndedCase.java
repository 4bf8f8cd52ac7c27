package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;

/**
 * What a programme's lists need of a case that has ended, for one trainee who took part.
 *
 * @param claimedPart as the trainee claimed it
 * @param waiting sheets about this trainee nobody signed: still open, or removed after the time for drafts
 */
public record EndedCase(UUID caseId, UUID traineeId, Instant endedAt, Part claimedPart, int waiting) {}
