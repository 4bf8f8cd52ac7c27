package org.scrubline.casework.reference;

import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Rubric;

/**
 * A reference case as its reader may see it: with the reader's own scores and nobody else's.
 *
 * @param rubric the version it is scored with
 * @param zone of the programme
 * @param closed whether nobody can score it any more
 * @param own the reader's own scores; null when there are none
 * @param scorings how many supervisors scored it
 * @param asked how many could: the supervisors of now, and those of then who did
 * @param scores whether the reader can score it now
 * @param directs whether the reader directs the programme
 */
public record ReferenceFile(
        ReferenceCase reference,
        Rubric rubric,
        ZoneId zone,
        boolean closed,
        @Nullable ReferenceScoring own,
        int scorings,
        int asked,
        boolean scores,
        boolean directs) {}
