package org.scrubline.signoff;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;

/** Recognises the signer before any transaction begins: a slow password hash must not hold a connection. */
@Service
class StoredVersionSigning implements VersionSigning {

    private final VersionSigningDesk desk;
    private final CountersignLists lists;
    private final VersionRules rules;
    private final SignerCheck signers;
    private final RefusedSignatures refused;

    StoredVersionSigning(
            VersionSigningDesk desk,
            CountersignLists lists,
            VersionRules rules,
            SignerCheck signers,
            RefusedSignatures refused) {
        this.refused = refused;
        this.desk = desk;
        this.lists = lists;
        this.rules = rules;
        this.signers = signers;
    }

    @Override
    public List<SignedLine> toCountersign(SignedIn supervisor) {
        return lists.of(supervisor);
    }

    @Override
    public List<SignedLine> awaited(SignedIn director) {
        return lists.led(director);
    }

    @Override
    public List<VersionSignature> of(SignedIn who, UUID record) {
        return desk.of(who, record);
    }

    @Override
    public Set<RecordEvent> mayFollow(SignedIn who, SignedSheet version) {
        return desk.mayFollow(who, version);
    }

    @Override
    public Attempt<VersionSignature> sign(SignedIn who, Said said, Credential credential) {
        try {
            Attempt<VersionSignature> attempt = recognised(who, said, credential);
            if (attempt instanceof Attempt.Refused<VersionSignature> no
                    && no.reasons().stream().anyMatch(StoredVersionSigning::notTheirs)) {
                refused.note(who, said.event(), said.record());
            }
            return attempt;
        } catch (NotFound notTheirs) {
            refused.note(who, said.event(), said.record());
            throw notTheirs;
        }
    }

    private static boolean notTheirs(Refusal reason) {
        return reason.field().equals(Signing.AUTHORITY);
    }

    private Attempt<VersionSignature> recognised(SignedIn who, Said said, Credential credential) {
        desk.recognise(who, said.record());
        Said tidy = tidy(said);
        Optional<Refusal> unfit = rules.words(tidy);
        return unfit.isPresent()
                ? Attempt.refused(unfit.get())
                : signers.confirm(who, credential, intent(tidy).hash())
                        .fold(how -> desk.sign(who, tidy, how), Attempt::refused);
    }

    @Override
    public Attempt<VersionSignature> signWithoutCredential(SignedIn who, Said said) {
        return desk.sign(who, tidy(said), null);
    }

    private static Intent intent(Said said) {
        return Intent.of(said.event(), said.record(), said.contentHash(), said.words());
    }

    private static Said tidy(Said said) {
        return new Said(said.event(), said.record(), said.contentHash(), FreeText.tidy(said.words()));
    }
}
