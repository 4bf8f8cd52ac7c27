package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.stereotype.Service;

@Service
class StoredVoids implements Voids {

    private final VoidDesk desk;
    private final SignerCheck signers;

    StoredVoids(VoidDesk desk, SignerCheck signers) {
        this.desk = desk;
        this.signers = signers;
    }

    @Override
    public Attempt<Statement> ask(SignedIn who, UUID recordId, VoidGround ground, Signature signature) {
        desk.recognise(who, recordId);
        return signers.confirm(who, signature, spoken -> desk.ask(who, recordId, ground, spoken));
    }

    @Override
    public Attempt<Statement> decide(SignedIn who, UUID recordId, boolean confirm, Signature signature) {
        desk.recognise(who, recordId);
        return signers.confirm(who, signature, spoken -> desk.decide(who, recordId, confirm, spoken));
    }

    @Override
    public List<SignedLine> waiting(SignedIn who) {
        return desk.waiting(who);
    }
}
