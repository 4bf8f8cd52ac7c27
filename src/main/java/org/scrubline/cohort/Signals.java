package org.scrubline.cohort;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;

/** Reads early signals and ways of scoring; {@code NotFound} for whoever may not see them. */
public interface Signals {

    /**
     * Early signals about the trainees of a programme, for its directors and committee members.
     *
     * @param programmeId null for the first the person may read
     */
    SignalReport ofTrainees(SignedIn who, @Nullable UUID programmeId);

    /**
     * How the supervisors of a programme score, for its directors.
     *
     * @param programmeId null for the first the person directs
     */
    SignalReport ofScorers(SignedIn who, @Nullable UUID programmeId);

    /**
     * How this supervisor scores, beside the others without their names.
     *
     * @param programmeId null for the first the person supervises in
     */
    OwnScoring own(SignedIn who, @Nullable UUID programmeId);
}
