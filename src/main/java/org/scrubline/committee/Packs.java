package org.scrubline.committee;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** Freezes the evidence for a meeting and reads it again. */
public interface Packs {

    /**
     * How long before freezing the cut-off lies, so that every signature given by then has been stored and the same
     * question has the same answer for ever.
     */
    Duration SETTLED = Duration.ofMinutes(1);

    /** That evidence is frozen, for those who see the meeting without reading it. */
    record Frozen(UUID traineeId, Instant cutOff, String hash) {}

    /** What a new making from the records gives, and whether it is the frozen text. */
    record Rebuilt(String hash, boolean same) {}

    /**
     * Freezes the evidence about a trainee of the meeting, once. A director, an administrator or the chair does.
     *
     * @throws org.scrubline.platform.NotFound for everyone else
     */
    Attempt<Frozen> freeze(SignedIn who, UUID meetingId, UUID traineeId);

    /** What is frozen for a meeting this person sees. */
    List<Frozen> frozen(SignedIn who, UUID meetingId);

    /**
     * The frozen evidence: for directors and committee members, and once a decision rests on it for the trainee, for who
     * hears an appeal, and for a visitor to whom the trainee's numbers are open.
     *
     * @throws org.scrubline.platform.NotFound for everyone else, and while nothing is frozen
     */
    Pack read(SignedIn who, UUID meetingId, UUID traineeId);

    /** The same when there is any; for who may read it. */
    Optional<Pack> find(SignedIn who, UUID meetingId, UUID traineeId);

    /** Makes it again from the records as known at its cut-off; for who may read it. */
    Rebuilt rebuild(SignedIn who, UUID meetingId, UUID traineeId);
}
