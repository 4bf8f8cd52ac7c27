package org.scrubline.committee;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.SignerCheck;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.stereotype.Service;

/** Recognises the director before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredSuspensions implements Suspensions {

    private final SuspensionDesk desk;
    private final GapReading gaps;
    private final SignerCheck signers;

    StoredSuspensions(SuspensionDesk desk, GapReading gaps, SignerCheck signers) {
        this.desk = desk;
        this.gaps = gaps;
        this.signers = signers;
    }

    @Override
    public List<Gap> gaps(SignedIn director, UUID programmeId) {
        return gaps.of(director, programmeId);
    }

    @Override
    public Attempt<List<Act>> suspend(
            SignedIn director, Of what, @Nullable SuspensionGround ground, Signature signature) {
        desk.recognise(director, what);
        return signers.confirm(director, signature.credential(), signature.intended())
                .fold(account -> desk.suspend(director, what, ground, signature.text()), Attempt::refused);
    }

    @Override
    public Attempt<List<Act>> reinstate(SignedIn director, Of what, Signature signature) {
        desk.recognise(director, what);
        return signers.confirm(director, signature.credential(), signature.intended())
                .fold(account -> desk.reinstate(director, what, signature.text()), Attempt::refused);
    }

    @Override
    public List<Act> history(SignedIn who, UUID programmeId, UUID traineeId) {
        return desk.history(who, programmeId, traineeId);
    }
}
