package org.scrubline.platform;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The passkeys of an account. Every method acts on the account given, which must be the asking person's own. */
public interface Passkeys {

    /** Longest label in characters. */
    int LABEL_LENGTH = 60;

    /** A registered passkey; {@code lastUsedAt} is null until it is used. */
    record Passkey(
            UUID id,
            String label,
            Instant createdAt,
            @Nullable Instant lastUsedAt) {}

    /**
     * What a page asks a passkey to sign.
     *
     * @param challenge base64url
     * @param rpId relying party
     * @param origin the only address the answer counts from
     * @param credentials ids of the passkeys that may answer, base64url; empty when any may
     */
    record Ask(String challenge, String rpId, String origin, List<String> credentials) {
        public Ask {
            credentials = List.copyOf(credentials);
        }
    }

    /**
     * What a page needs to make a new passkey.
     *
     * @param ask its challenge, and under {@code credentials} the passkeys there are already
     * @param userId handle of the account, base64url; tells nothing about the person
     * @param username log-in name, shown by the device
     * @param displayName printed name, shown by the device
     */
    record Offer(Ask ask, String userId, String username, String displayName) {}

    /** Oldest first. */
    List<Passkey> of(UUID accountId);

    /** What to ask the account's passkeys; empty when it has none. */
    Optional<Ask> ask(UUID accountId, byte[] challenge);

    /** The same without a challenge, for a page that fetches it when it knows what is to be signed. */
    default Optional<Ask> askLater(UUID accountId) {
        return ask(accountId, new byte[0]);
    }

    /** What to ask somebody whose account is not known yet. */
    Ask askAnyone(byte[] challenge);

    /** What to ask for a new passkey of this person. */
    Offer offer(SignedIn who, byte[] challenge);

    /**
     * Registers a passkey.
     *
     * @param label name the owner knows it by
     * @param attestation what the browser sent, a RegistrationResponseJSON
     * @param challenge the one that was offered
     */
    Attempt<Passkey> register(UUID accountId, String label, String attestation, byte[] challenge);

    /**
     * Removes one passkey for good. Signatures made with it can be verified as before.
     *
     * @throws NotFound when the account has no such passkey
     */
    void remove(UUID accountId, UUID id);
}
