package org.scrubline.people;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** When supervisors were introduced to scoring in a programme: that they can be held to one scale is shown, not assumed. */
public interface Introductions {

    /** The earliest day by person; whoever is missing was not introduced, as far as recorded. */
    Map<UUID, LocalDate> of(UUID programmeId);

    /** The same as it was recorded at an instant. */
    Map<UUID, LocalDate> of(UUID programmeId, Instant knownAt);

    /**
     * Records the day a supervisor, or a trainee who may teach one day, was introduced. Recording the same day again keeps
     * one row.
     *
     * @param day as an ISO date such as 2026-03-12, not in the future
     * @return the day, or why not, each reason at the field of the form it is about
     * @throws org.scrubline.platform.NotFound for anyone but a director of the programme
     */
    Attempt<LocalDate> record(SignedIn director, UUID programmeId, UUID personId, String day);
}
