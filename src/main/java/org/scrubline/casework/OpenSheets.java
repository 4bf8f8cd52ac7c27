package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Open sheets of supervisors who have left or are about to, and their way to another supervisor with what is on them. For
 * those who direct or administer the programme; what is on a sheet is shown to nobody but its new scorer.
 */
public interface OpenSheets {

    /**
     * A supervisor who is asked for sheets.
     *
     * @param supervises whether the person still is a supervisor of the programme
     * @param sheets open ones of cases that have ended
     */
    record Holder(UUID id, String name, boolean supervises, int sheets) {}

    /**
     * One of them.
     *
     * @param answered steps answered so far
     */
    record Held(
            UUID sheetId,
            UUID scorerId,
            UUID traineeId,
            String traineeName,
            String reference,
            String procedureCode,
            Instant endedAt,
            int answered) {}

    /**
     * That a sheet was begun by somebody else.
     *
     * @param answered steps answered when it changed hands
     */
    record Begun(String name, int answered, Instant at) {}

    /** Everyone with an open sheet in the programme: first those who have left, then by name. */
    List<Holder> holders(SignedIn who, UUID programmeId);

    /** The sheets of one of them, oldest case first. */
    List<Held> of(SignedIn who, UUID programmeId, UUID scorerId);

    /**
     * Hands an open sheet with what is on it to another supervisor of the programme, who looks at it and signs in their own
     * name. Whoever signs in the same moment comes first or too late, never both.
     *
     * @param reason in words, at most 500 characters
     * @return the sheet's id, or why not, each reason at the field of the form it is about
     * @throws org.scrubline.platform.NotFound for anyone else, and when there is no such sheet
     */
    Attempt<UUID> handOver(SignedIn who, UUID programmeId, UUID sheetId, UUID supervisorId, String reason);

    /** Who began this sheet, when it came from somebody with answers on it. */
    Optional<Begun> begun(UUID sheetId);
}
