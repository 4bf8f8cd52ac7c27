package org.scrubline.casework;

import java.time.Duration;
import java.util.UUID;

/**
 * A line of the list "to score".
 *
 * @param traineeName printed name
 * @param age time since the end of the case
 * @param stepsSaid steps that are not blank any more
 * @param stepsInAll steps of the rubric
 * @param versionNo the version being written, 1 for the first
 */
public record OpenSheet(
        UUID sheetId,
        SurgicalCase surgicalCase,
        String traineeName,
        Duration age,
        int stepsSaid,
        int stepsInAll,
        int versionNo) {}
