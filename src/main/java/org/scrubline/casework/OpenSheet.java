package org.scrubline.casework;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A line of the list "to score".
 *
 * @param traineeName printed name
 * @param age time since the end of the case
 * @param stepsSaid steps that are not blank any more
 * @param stepsInAll steps of the rubric
 * @param touchedAt last change
 * @param removedOn when it will be removed unless it is changed; null while its scorer was not told so
 * @param versionNo the version being written, 1 for the first
 */
public record OpenSheet(
        UUID sheetId,
        SurgicalCase surgicalCase,
        String traineeName,
        Duration age,
        int stepsSaid,
        int stepsInAll,
        Instant touchedAt,
        @Nullable Instant removedOn,
        int versionNo) {}
