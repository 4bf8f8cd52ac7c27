package org.scrubline.committee;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;

/**
 * Decisions of a committee: written by the chair, signed over the very bytes shown, never changed. A later one takes the
 * place of an earlier one. Who may not read or do something is answered {@code NotFound}.
 */
public interface Decisions {

    /** Fewest characters of a reason. */
    int SHORTEST_REASON = 10;

    /** Most characters of one text. */
    int LONGEST_TEXT = 4000;

    /**
     * A decision as it would be signed.
     *
     * @param json canonical JSON of {@code content}
     * @param hash its SHA-256
     * @param obstacles what stands against signing it
     */
    record Preview(Pack pack, DecisionContent content, String json, String hash, List<Refusal> obstacles) {}

    /** Who may vote on a trainee of a meeting, once the evidence is frozen. */
    Ballot ballot(SignedIn who, UUID meetingId, UUID traineeId);

    /** What is written and not signed; for directors and committee members. */
    Optional<DecisionDraft> draft(SignedIn who, UUID meetingId, UUID traineeId);

    /**
     * Keeps what the chair wrote, whatever is still missing; only a family, bands, an answer and a review date are needed
     * to show it.
     */
    Attempt<DecisionDraft> write(SignedIn chair, UUID meetingId, UUID traineeId, DecisionDraft draft);

    /** Drops what is written; dropping nothing changes nothing. */
    void drop(SignedIn chair, UUID meetingId, UUID traineeId);

    Preview preview(SignedIn chair, UUID meetingId, UUID traineeId);

    /**
     * Signs what is written if it still has the hash shown, and sets what the trainee may do.
     *
     * @throws org.scrubline.platform.StaleData when something changed since
     */
    Attempt<Decision> sign(SignedIn chair, UUID meetingId, UUID traineeId, String hash, Credential credential);

    /** The same below the credential check, for a history that never was; only the demo programme calls it. */
    Attempt<Decision> signWithoutCredential(SignedIn chair, UUID meetingId, UUID traineeId);

    /** One decision with everything said about it. */
    DecisionFile read(SignedIn who, UUID decisionId);

    /** Those of a meeting, for who reads them; empty for who only sees the meeting. */
    List<Decision> ofMeeting(SignedIn who, UUID meetingId);

    /** Decisions about this person, of trainees open to this visitor, or that this person hears an appeal against. */
    List<DecisionFile> concerning(SignedIn who);
}
