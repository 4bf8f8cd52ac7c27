package org.scrubline.cohort;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;

/** Whether training is shared evenly between groups of trainees, for the analysts of a programme alone. */
public interface Equality {

    /**
     * The tables on groups.
     *
     * @param programmeId null for the first the person analyses
     * @throws org.scrubline.platform.NotFound for whoever is no analyst of it
     */
    EqualityReport read(SignedIn who, @Nullable UUID programmeId);
}
