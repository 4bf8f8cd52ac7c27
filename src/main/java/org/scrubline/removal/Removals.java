package org.scrubline.removal;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;

/**
 * Removes the signed records of trainees whose term is over. Everything here answers {@code NotFound} to whoever neither
 * directs nor administers the programme.
 */
public interface Removals {

    /** Longest reason in characters. */
    int REASON_LENGTH = 500;

    /** Trainees of the programme whose records' term is over, longest ago first. */
    List<EndedTerm> ended(SignedIn who, UUID programme);

    /** Everything asked for in the programme, newest first. */
    List<RemovalFile> files(SignedIn who, UUID programme);

    /**
     * Asks for all signed records of a trainee in the programme to be removed. Asked again by the same person before
     * anybody confirmed, the first request is answered.
     *
     * @return id of the request, or why not; the fields are {@code trainee}, {@code reason} and those of the credential
     */
    Attempt<UUID> ask(SignedIn who, UUID programme, UUID trainee, String reason, Credential credential);

    /**
     * Confirms what somebody else asked, which removes the records. Sent again, the same removal is answered.
     *
     * @return id of the removal, or why not
     */
    Attempt<UUID> confirm(SignedIn who, UUID request, Credential credential);
}
