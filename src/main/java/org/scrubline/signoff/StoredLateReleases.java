package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.LateAdmission;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Recognises the director before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredLateReleases implements LateReleases, LateAdmission {

    private final LateReleaseDesk desk;
    private final LateReleaseStore store;
    private final SignerCheck signers;

    StoredLateReleases(LateReleaseDesk desk, LateReleaseStore store, SignerCheck signers) {
        this.desk = desk;
        this.store = store;
        this.signers = signers;
    }

    @Override
    @Transactional(readOnly = true)
    public boolean released(UUID sheetId) {
        return store.of(sheetId).isPresent();
    }

    @Override
    public List<ClosedSheet> closed(SignedIn director) {
        return desk.closed(director);
    }

    @Override
    public ClosedSheet closed(SignedIn director, UUID sheetId) {
        return desk.closed(director, sheetId);
    }

    @Override
    public Attempt<LateRelease> release(SignedIn director, UUID sheetId, String reason, Credential credential) {
        desk.closed(director, sheetId);
        String why = FreeText.tidy(reason);
        Optional<Refusal> unfit = desk.against(why);
        return unfit.isPresent()
                ? Attempt.refused(unfit.get())
                : signers.confirm(
                                director,
                                credential,
                                LateRelease.intent(sheetId, why).hash())
                        .fold(how -> desk.release(director, sheetId, new Spoken(why, how)), Attempt::refused);
    }
}
