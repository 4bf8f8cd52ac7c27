package org.scrubline.entitlement;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;

/** Reads what trainees of the organisation in scope may do. Whoever asks has settled who may know it. */
public interface Entitlements {

    /** What holds now; empty while no committee has decided anything. */
    List<Entitlement> of(UUID programmeId, UUID traineeId);

    /** What holds now for a case of this family and band. */
    Optional<Entitlement> of(UUID programmeId, UUID traineeId, Family family, Band band);

    /** What holds now for everyone in a programme. */
    List<Entitlement> ofProgramme(UUID programmeId);

    /** Every change about a trainee, oldest first. */
    List<EntitlementChange> history(UUID programmeId, UUID traineeId);
}
