package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;

@Service
class StoredVersions implements Versions {

    private final VersionDesk desk;
    private final SignerCheck signers;

    StoredVersions(VersionDesk desk, SignerCheck signers) {
        this.desk = desk;
        this.signers = signers;
    }

    @Override
    public RecordHistory history(SignedIn who, UUID recordId) {
        return desk.history(who, recordId);
    }

    @Override
    public Attempt<UUID> open(SignedIn who, UUID recordId, String reason) {
        return desk.open(who, recordId, reason);
    }

    @Override
    public void drop(SignedIn who, UUID recordId) {
        desk.drop(who, recordId);
    }

    @Override
    public List<Person> delegates(SignedIn director, UUID recordId) {
        return desk.delegates(director, recordId);
    }

    @Override
    public Attempt<Statement> nameDelegate(SignedIn director, UUID recordId, UUID delegate, Signature signature) {
        desk.delegates(director, recordId);
        return signers.confirm(director, signature, spoken -> desk.nameDelegate(director, recordId, delegate, spoken));
    }
}
