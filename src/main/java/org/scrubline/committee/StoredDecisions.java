package org.scrubline.committee;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignerCheck;
import org.springframework.stereotype.Service;

/** Recognises the chair before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredDecisions implements Decisions {

    private final DecisionDesk desk;
    private final DecisionReading reading;
    private final SignerCheck signers;

    StoredDecisions(DecisionDesk desk, DecisionReading reading, SignerCheck signers) {
        this.desk = desk;
        this.reading = reading;
        this.signers = signers;
    }

    @Override
    public Ballot ballot(SignedIn who, UUID meetingId, UUID traineeId) {
        return reading.ballot(who, meetingId, traineeId);
    }

    @Override
    public Optional<DecisionDraft> draft(SignedIn who, UUID meetingId, UUID traineeId) {
        return reading.draft(who, meetingId, traineeId);
    }

    @Override
    public Attempt<DecisionDraft> write(SignedIn chair, UUID meetingId, UUID traineeId, DecisionDraft draft) {
        return desk.write(chair, meetingId, traineeId, draft);
    }

    @Override
    public void drop(SignedIn chair, UUID meetingId, UUID traineeId) {
        desk.drop(chair, meetingId, traineeId);
    }

    @Override
    public Preview preview(SignedIn chair, UUID meetingId, UUID traineeId) {
        return desk.preview(chair, meetingId, traineeId);
    }

    @Override
    public Attempt<Decision> sign(SignedIn chair, UUID meetingId, UUID traineeId, String hash, Credential credential) {
        desk.preview(chair, meetingId, traineeId);
        return signers.confirm(chair, credential, hash)
                .fold(how -> desk.sign(chair, meetingId, traineeId, hash, how), Attempt::refused);
    }

    @Override
    public Attempt<Decision> signWithoutCredential(SignedIn chair, UUID meetingId, UUID traineeId) {
        return desk.sign(chair, meetingId, traineeId, null, null);
    }

    @Override
    public DecisionFile read(SignedIn who, UUID decisionId) {
        return reading.read(who, decisionId);
    }

    @Override
    public List<Decision> ofMeeting(SignedIn who, UUID meetingId) {
        return reading.ofMeeting(who, meetingId);
    }

    @Override
    public List<DecisionFile> concerning(SignedIn who) {
        return reading.concerning(who);
    }
}
