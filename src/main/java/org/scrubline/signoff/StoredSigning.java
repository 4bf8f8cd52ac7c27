package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;

/** Recognises the signer before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredSigning implements Signing {

    private final SigningDesk desk;
    private final SignerCheck signers;

    StoredSigning(SigningDesk desk, SignerCheck signers) {
        this.desk = desk;
        this.signers = signers;
    }

    @Override
    public SigningPreview preview(SignedIn scorer, UUID sheetId) {
        return desk.preview(scorer, sheetId);
    }

    @Override
    public Attempt<SignedSheet> sign(SignedIn scorer, UUID sheetId, String contentHash, Credential credential) {
        desk.recognise(scorer, sheetId);
        return signers.confirm(scorer, credential, contentHash)
                .fold(how -> desk.sign(scorer, sheetId, contentHash, how), Attempt::refused);
    }

    @Override
    public TableSigning atTheTable(SignedIn scorer, UUID sheetId) {
        return desk.atTheTable(scorer, sheetId);
    }

    @Override
    public Attempt<SignedSheet> signAtTheTable(SignedIn scorer, UUID sheetId, TableSignature signature) {
        desk.recognise(scorer, sheetId);
        return signers.confirm(scorer, signature.credential(), signature.hash())
                .fold(how -> desk.signAtTheTable(scorer, sheetId, signature, how), Attempt::refused);
    }

    @Override
    public Attempt<SignedSheet> signWithoutCredential(SignedIn scorer, UUID sheetId) {
        return desk.sign(scorer, sheetId);
    }
}
