package org.scrubline.casework;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/** Enters the cases trainees kept on a device, each once however often it is sent. */
public interface DeviceCases {

    /**
     * Enters the case with the trainee's own levels. The same content again gives the first receipt again. Another
     * content under the same id, and a case whose end is still to come, are kept for the trainee to decide.
     *
     * @param levels level 1 to 5 by step code of the procedure's current rubric
     * @return what the server has now, or every reason why not; nothing is stored then
     */
    Attempt<CaseReceipt> enter(SignedIn who, CaseSubmission sent, CaseEntry entry, Map<String, Integer> levels);

    /** What the server has under this id from this person, the first that came first; empty when nothing. */
    List<CaseReceipt> receipts(SignedIn who, UUID submission);

    /** Cases that wait for this person to decide, the oldest first. */
    List<CaseAside> asides(SignedIn who);

    /**
     * One of them.
     *
     * @throws org.scrubline.platform.NotFound when it does not wait for this person
     */
    CaseAside aside(SignedIn who, UUID id);

    /**
     * Enters a case that waited, as its trainee put it right.
     *
     * @param levels as sent; those of steps the procedure's current rubric does not have are left out
     * @return the case, or every reason why not; it goes on waiting then
     * @throws org.scrubline.platform.NotFound when it does not wait for this person
     */
    Attempt<SurgicalCase> enterAside(SignedIn who, UUID id, CaseEntry entry, Map<String, Integer> levels);

    /**
     * Puts a case that waited away without entering it. What was sent stays stored.
     *
     * @throws org.scrubline.platform.NotFound when it does not wait for this person
     */
    void putAway(SignedIn who, UUID id);
}
