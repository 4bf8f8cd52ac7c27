package org.scrubline.retention;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** How long records are kept, and which are held. */
public interface Retention {

    /** Longest reason of a hold in characters. */
    int REASON_LENGTH = 500;

    /** What holds in a programme now. */
    RetentionTerms terms(UUID programmeId);

    /** Whether anything about this trainee is under a hold, so that no job may remove it. */
    boolean held(UUID traineeId);

    /**
     * Changes the terms of a programme; those in force already change nothing.
     *
     * @throws org.scrubline.platform.NotFound unless this person directs the programme
     */
    Attempt<RetentionTerms> change(SignedIn who, UUID programmeId, RetentionTerms terms);

    /**
     * Every hold ever set in a programme, newest first.
     *
     * @throws org.scrubline.platform.NotFound unless this person directs or administers the programme
     */
    List<RecordHold> holds(SignedIn who, UUID programmeId);

    /** Whom a hold can be set on: everyone who is or was a trainee of the programme; throws as {@link #holds}. */
    List<Person> trainees(SignedIn who, UUID programmeId);

    /** Sets a hold on a trainee; throws as {@link #holds}. */
    Attempt<RecordHold> hold(SignedIn who, UUID programmeId, @Nullable UUID traineeId, String reason);

    /** Ends a hold. Ending one that has ended changes nothing; throws as {@link #holds}. */
    void end(SignedIn who, UUID holdId);
}
