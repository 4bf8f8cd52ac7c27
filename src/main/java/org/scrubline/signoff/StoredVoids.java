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
    private final FreshPassword password;

    StoredVoids(VoidDesk desk, FreshPassword password) {
        this.desk = desk;
        this.password = password;
    }

    @Override
    public Attempt<Statement> ask(SignedIn who, UUID recordId, VoidGround ground, Signature signature) {
        desk.recognise(who, recordId);
        return password.confirm(who, signature.password(), () -> desk.ask(who, recordId, ground, signature.text()));
    }

    @Override
    public Attempt<Statement> decide(SignedIn who, UUID recordId, boolean confirm, Signature signature) {
        desk.recognise(who, recordId);
        return password.confirm(who, signature.password(), () -> desk.decide(who, recordId, confirm, signature.text()));
    }

    @Override
    public List<SignedLine> waiting(SignedIn who) {
        return desk.waiting(who);
    }
}
