package org.scrubline.people;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** Opens records to visitors, and says what is open to one now. */
public interface Visitors {

    /** Longest purpose in characters. */
    int PURPOSE_LENGTH = 200;

    /** Longest time one access may last, in days. */
    int LONGEST_DAYS = 366;

    /** The access by which this person may read a trainee's numbers now; empty for everyone who is no visitor. */
    List<VisitorAccess> toTrainee(SignedIn who, UUID traineeId);

    /** The access by which this person may read a signed record now, named by itself or by its trainee. */
    Optional<VisitorAccess> toRecord(SignedIn who, UUID recordId, UUID traineeId, UUID programmeId);

    /** Everything open to this person now, oldest first. */
    List<VisitorAccess> open(SignedIn who);

    /**
     * Every access ever given in a programme, newest first.
     *
     * @throws org.scrubline.platform.NotFound unless this person directs the programme
     */
    List<VisitorAccess> given(SignedIn who, UUID programmeId);

    /** Opens what is asked for, or says every reason why not; throws as {@link #given}. */
    Attempt<VisitorAccess> give(SignedIn who, UUID programmeId, VisitorRequest request);

    /**
     * Ends an access now. Ending one that is over changes nothing.
     *
     * @throws org.scrubline.platform.NotFound unless this person directs its programme
     */
    void end(SignedIn who, UUID accessId);
}
