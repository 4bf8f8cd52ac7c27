package org.scrubline.casework;

import java.util.UUID;

/**
 * One trainee's part in a case that has not happened yet.
 *
 * @param traineeName printed name
 * @param scorerName printed name of the supervisor who will be asked to score it
 * @param goal what the trainee wants to work on; empty when nothing was said
 */
public record PlannedCase(
        SurgicalCase surgicalCase, UUID traineeId, String traineeName, String scorerName, Part part, String goal) {}
