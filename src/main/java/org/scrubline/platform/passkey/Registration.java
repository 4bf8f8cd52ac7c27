package org.scrubline.platform.passkey;

import com.webauthn4j.WebAuthnManager;
import com.webauthn4j.converter.util.ObjectConverter;
import com.webauthn4j.data.PublicKeyCredentialParameters;
import com.webauthn4j.data.PublicKeyCredentialType;
import com.webauthn4j.data.RegistrationParameters;
import com.webauthn4j.data.attestation.AttestationObject;
import com.webauthn4j.data.attestation.authenticator.AttestedCredentialData;
import com.webauthn4j.data.attestation.authenticator.COSEKey;
import com.webauthn4j.data.attestation.statement.COSEAlgorithmIdentifier;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.scrubline.platform.AssertionCheck;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.BodyJson;
import org.springframework.stereotype.Component;

/** Reads the key out of what a browser answers when a passkey is made (Web Authentication Level 3, section 7.1). */
@Component
class Registration {

    /** ES256, EdDSA, RS256: what devices have. The page's script offers the same. */
    private static final List<PublicKeyCredentialParameters> ALGORITHMS = Stream.of(
                    COSEAlgorithmIdentifier.ES256, COSEAlgorithmIdentifier.EdDSA, COSEAlgorithmIdentifier.RS256)
            .map(algorithm -> new PublicKeyCredentialParameters(PublicKeyCredentialType.PUBLIC_KEY, algorithm))
            .toList();

    private static final int LARGEST = 64 * 1024;

    private static final ObjectConverter CONVERTER = new ObjectConverter();
    private static final WebAuthnManager MANAGER = WebAuthnManager.createNonStrictWebAuthnManager();

    private final RelyingParty party;

    Registration(RelyingParty party) {
        this.party = party;
    }

    /** A key as made; {@code credentialId} and {@code publicKey} are base64url. */
    record NewKey(String credentialId, String publicKey, long algorithm, long signatureCount) {}

    /** The key, if it was made for this challenge, on this server's page, by a device that checked its owner. */
    Optional<NewKey> read(String json, byte[] challenge) {
        if (challenge.length != AssertionCheck.CHALLENGE_LENGTH || !BodyJson.holds(json, LARGEST)) {
            return Optional.empty();
        }
        try {
            RegistrationParameters wanted =
                    new RegistrationParameters(party.expecting(challenge), ALGORITHMS, true, true);
            return Optional.ofNullable(
                            MANAGER.verifyRegistrationResponseJSON(json, wanted).getAttestationObject())
                    .flatMap(Registration::key);
        } catch (RuntimeException unreadable) {
            // Whatever stands in the field came from outside, and the library says so in many ways.
            return Optional.empty();
        }
    }

    private static Optional<NewKey> key(AttestationObject made) {
        AttestedCredentialData data = made.getAuthenticatorData().getAttestedCredentialData();
        COSEKey key = data == null ? null : data.getCOSEKey();
        COSEAlgorithmIdentifier algorithm = key == null ? null : key.getAlgorithm();
        if (data == null || key == null || algorithm == null) {
            return Optional.empty();
        }
        return Optional.of(new NewKey(
                Base64Url.text(data.getCredentialId()),
                Base64Url.text(CONVERTER.getCborMapper().writeValueAsBytes(key)),
                algorithm.getValue(),
                made.getAuthenticatorData().getSignCount()));
    }
}
