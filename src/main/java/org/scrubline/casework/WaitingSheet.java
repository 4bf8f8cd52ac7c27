package org.scrubline.casework;

import java.time.Instant;
import java.util.UUID;

/**
 * An open sheet of a case that has ended.
 *
 * @param scorerId who is asked for the score
 */
public record WaitingSheet(UUID sheetId, UUID programmeId, UUID scorerId, Instant caseEndedAt) {}
