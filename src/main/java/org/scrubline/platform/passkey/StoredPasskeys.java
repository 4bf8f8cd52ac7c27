package org.scrubline.platform.passkey;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredPasskeys implements Passkeys {

    private final PasskeyStore store;
    private final Registration registration;
    private final RelyingParty party;
    private final Clock clock;

    StoredPasskeys(PasskeyStore store, Registration registration, RelyingParty party, Clock clock) {
        this.store = store;
        this.registration = registration;
        this.party = party;
        this.clock = clock;
    }

    @Override
    public List<Passkey> of(UUID accountId) {
        return store.ofAccount(accountId).stream().map(StoredPasskeys::shown).toList();
    }

    @Override
    public Optional<Ask> ask(UUID accountId, byte[] challenge) {
        List<String> credentials = credentials(accountId);
        return credentials.isEmpty() ? Optional.empty() : Optional.of(asking(challenge, credentials));
    }

    @Override
    public Ask askAnyone(byte[] challenge) {
        return asking(challenge, List.of());
    }

    @Override
    public Offer offer(SignedIn who, byte[] challenge) {
        return new Offer(
                asking(challenge, credentials(who.accountId())),
                AccountHandle.of(who.accountId()),
                who.username(),
                who.printedName());
    }

    @Override
    @Transactional
    public Attempt<Passkey> register(UUID accountId, String label, String attestation, byte[] challenge) {
        String name = FreeText.tidy(label);
        if (name.isEmpty()) {
            return Attempt.refused(Refusal.at("label", "refusal.passkey.label"));
        }
        Optional<Refusal> unfit = FreeText.check("label", name, LABEL_LENGTH);
        if (unfit.isPresent()) {
            return Attempt.refused(unfit.get());
        }
        return registration
                .read(attestation, challenge)
                .map(key -> keep(accountId, name, key))
                .orElseGet(() -> Attempt.refused(Refusal.at("passkey", "refusal.passkey.not-made", party.origin())));
    }

    private Attempt<Passkey> keep(UUID accountId, String label, Registration.NewKey made) {
        PasskeyStore.Stored key = new PasskeyStore.Stored(
                UUID.randomUUID(),
                accountId,
                made.credentialId(),
                made.publicKey(),
                made.algorithm(),
                label,
                made.signatureCount(),
                clock.instant().truncatedTo(ChronoUnit.MICROS),
                null);
        return store.insert(key)
                ? Attempt.done(shown(key))
                : Attempt.refused(Refusal.at("passkey", "refusal.passkey.known"));
    }

    @Override
    @Transactional
    public void remove(UUID accountId, UUID id) {
        if (!store.delete(accountId, id)) {
            throw new NotFound();
        }
    }

    private List<String> credentials(UUID accountId) {
        return store.ofAccount(accountId).stream()
                .map(PasskeyStore.Stored::credentialId)
                .toList();
    }

    private Ask asking(byte[] challenge, List<String> credentials) {
        return new Ask(Base64Url.text(challenge), party.id(), party.origin(), credentials);
    }

    private static Passkey shown(PasskeyStore.Stored key) {
        return new Passkey(key.id(), key.label(), key.createdAt(), key.lastUsedAt());
    }
}
