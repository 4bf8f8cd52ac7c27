package org.scrubline.committee;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.scrubline.signoff.Versions.Signature;

/**
 * Suspends and reinstates what a trainee may do. A gap proposes; only a director's signature does. Anyone else is answered
 * {@code NotFound}.
 */
public interface Suspensions {

    /**
     * A trainee without a case of a family for longer than the programme allows.
     *
     * @param lastCaseAt null when none was recorded since the decision
     * @param days whole days since then, or since the decision
     */
    record Gap(
            Person trainee,
            Entitlement entitlement,
            @Nullable Instant lastCaseAt,
            long days) {}

    /** What a programme's trainees may do and have not done for too long. */
    List<Gap> gaps(SignedIn director, UUID programmeId);

    /** Suspends everything that holds in a family. */
    Attempt<List<Act>> suspend(SignedIn director, Of what, @Nullable SuspensionGround ground, Signature signature);

    /** Everything suspended in a family holds again. */
    Attempt<List<Act>> reinstate(SignedIn director, Of what, Signature signature);

    /** Suspensions and reinstatements of a trainee, oldest first; for directors, committee members and the trainee. */
    List<Act> history(SignedIn who, UUID programmeId, UUID traineeId);

    /** What is suspended or reinstated. */
    record Of(UUID programmeId, UUID traineeId, Family family) {}
}
