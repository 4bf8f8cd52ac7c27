package org.scrubline.platform.passkey;

import com.webauthn4j.WebAuthnAuthenticationManager;
import com.webauthn4j.data.AuthenticationData;
import com.webauthn4j.data.attestation.authenticator.AuthenticatorData;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.AssertionCheck;
import org.scrubline.platform.AssertionFault;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.BodyJson;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what a passkey answered and tells whose it is. */
@Component
public class PasskeyAnswers {

    private static final String FIELD = "passkey";
    private static final int LARGEST = 64 * 1024;
    private static final WebAuthnAuthenticationManager READER = new WebAuthnAuthenticationManager();

    private final PasskeyStore store;
    private final RelyingParty party;
    private final Clock clock;

    PasskeyAnswers(PasskeyStore store, RelyingParty party, Clock clock) {
        this.store = store;
        this.party = party;
        this.clock = clock;
    }

    /** Whose passkey it says it is; nothing is checked. */
    @Transactional(readOnly = true)
    public Optional<UUID> claimed(String json) {
        return read(json).flatMap(this::stored).map(PasskeyStore.Stored::accountId);
    }

    /**
     * Who answered, if the answer stands.
     *
     * @param json an AuthenticationResponseJSON as the browser sent it
     * @param challenge the 32 bytes it must be a signature of
     */
    @Transactional
    public Attempt<Recognised.ByPasskey> check(String json, byte[] challenge) {
        AuthenticationData answer = read(json).orElse(null);
        if (answer == null) {
            return refused(AssertionFault.UNREADABLE);
        }
        PasskeyStore.Stored key = stored(answer).orElse(null);
        if (key == null || !names(answer, key.accountId())) {
            return Attempt.refused(Refusal.at(FIELD, "refusal.passkey.unknown"));
        }
        Assertion assertion = assertion(answer, key, challenge);
        return AssertionCheck.fault(assertion, challenge)
                .map(this::refused)
                .orElseGet(() -> used(key, answer, assertion));
    }

    private Attempt<Recognised.ByPasskey> used(
            PasskeyStore.Stored key, AuthenticationData answer, Assertion assertion) {
        AuthenticatorData<?> data = answer.getAuthenticatorData();
        return store.used(key.id(), data == null ? 0 : data.getSignCount(), clock.instant())
                ? Attempt.done(new Recognised.ByPasskey(key.accountId(), assertion))
                : Attempt.refused(Refusal.at(FIELD, "refusal.passkey.copied", key.label()));
    }

    private Assertion assertion(AuthenticationData answer, PasskeyStore.Stored key, byte[] challenge) {
        return new Assertion(
                Base64Url.text(challenge),
                key.credentialId(),
                key.publicKey(),
                key.algorithm(),
                text(answer.getAuthenticatorDataBytes()),
                text(answer.getCollectedClientDataBytes()),
                text(answer.getSignature()),
                party.id(),
                party.origin());
    }

    private Optional<PasskeyStore.Stored> stored(AuthenticationData answer) {
        return store.byCredential(text(answer.getCredentialId()));
    }

    /** The handle is optional in the standard; when it is there it must be the owner's. */
    private static boolean names(AuthenticationData answer, UUID accountId) {
        byte[] handle = answer.getUserHandle();
        return handle == null || text(handle).equals(AccountHandle.of(accountId));
    }

    private static Optional<AuthenticationData> read(String json) {
        if (!BodyJson.holds(json, LARGEST)) {
            return Optional.empty();
        }
        try {
            return Optional.of(READER.parse(json));
        } catch (RuntimeException unreadable) {
            // Whatever stands in the field came from outside, and the library says so in many ways.
            return Optional.empty();
        }
    }

    private static String text(byte @Nullable [] bytes) {
        return bytes == null ? "" : Base64Url.text(bytes);
    }

    private Attempt<Recognised.ByPasskey> refused(AssertionFault fault) {
        return Attempt.refused(Refusal.at(FIELD, "refusal.passkey." + fault.name(), party.origin()));
    }
}
