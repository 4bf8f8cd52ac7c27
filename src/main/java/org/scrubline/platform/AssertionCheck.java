package org.scrubline.platform;

import com.webauthn4j.WebAuthnAuthenticationManager;
import com.webauthn4j.converter.util.ObjectConverter;
import com.webauthn4j.credential.CredentialRecordImpl;
import com.webauthn4j.data.AuthenticationParameters;
import com.webauthn4j.data.AuthenticationRequest;
import com.webauthn4j.data.attestation.authenticator.AAGUID;
import com.webauthn4j.data.attestation.authenticator.AttestedCredentialData;
import com.webauthn4j.data.attestation.authenticator.COSEKey;
import com.webauthn4j.data.attestation.statement.NoneAttestationStatement;
import com.webauthn4j.data.client.Origin;
import com.webauthn4j.data.client.challenge.DefaultChallenge;
import com.webauthn4j.server.ServerProperty;
import com.webauthn4j.verifier.exception.BadChallengeException;
import com.webauthn4j.verifier.exception.BadOriginException;
import com.webauthn4j.verifier.exception.BadRpIdException;
import com.webauthn4j.verifier.exception.BadSignatureException;
import com.webauthn4j.verifier.exception.UserNotPresentException;
import com.webauthn4j.verifier.exception.UserNotVerifiedException;
import java.security.MessageDigest;
import java.util.Optional;

/**
 * Verifies assertions by Web Authentication Level 3, section 7.2, with nothing but the assertion and the hash it must
 * answer. The server runs the same check before it accepts one as anybody may run years later.
 *
 * <p>The id of the credential and the counter are the two things the signature does not settle: the id is fixed by
 * {@link Assertion#hash} in the signed record, the counter is compared when the assertion is accepted.
 */
public final class AssertionCheck {

    /** Length of every challenge in bytes: that of SHA-256. */
    public static final int CHALLENGE_LENGTH = 32;

    private static final ObjectConverter CONVERTER = new ObjectConverter();
    private static final WebAuthnAuthenticationManager MANAGER = new WebAuthnAuthenticationManager();

    private AssertionCheck() {}

    /**
     * The first thing wrong with an assertion, if anything is.
     *
     * @param signed the bytes it must be a signature of: the SHA-256 of what was signed
     */
    public static Optional<AssertionFault> fault(Assertion assertion, byte[] signed) {
        try {
            verify(assertion, signed);
            return Optional.empty();
        } catch (RuntimeException e) {
            // The library has many ways to say that bytes are not what they should be; each of them is a fault.
            return Optional.of(kind(e));
        }
    }

    private static void verify(Assertion assertion, byte[] signed) {
        byte[] challenge = Base64Url.bytes(assertion.challenge());
        if (signed.length != CHALLENGE_LENGTH || !MessageDigest.isEqual(challenge, signed)) {
            throw new BadChallengeException("another challenge");
        }
        Origin origin = new Origin(assertion.origin());
        if (!origin.toString().equals(assertion.origin())) {
            throw new BadOriginException("not written as browsers do");
        }
        AuthenticationRequest request = new AuthenticationRequest(
                Base64Url.bytes(assertion.credentialId()),
                Base64Url.bytes(assertion.authenticatorData()),
                Base64Url.bytes(assertion.clientData()),
                Base64Url.bytes(assertion.signature()));
        ServerProperty here = ServerProperty.builder()
                .origin(origin)
                .rpId(assertion.rpId())
                .challenge(new DefaultChallenge(challenge))
                .build();
        MANAGER.verify(request, new AuthenticationParameters(here, credential(assertion), null, true));
    }

    /** The counter starts at 0 here, so any is accepted; the key must be of the algorithm it is stored with. */
    private static CredentialRecordImpl credential(Assertion assertion) {
        COSEKey key = CONVERTER.getCborMapper().readValue(Base64Url.bytes(assertion.publicKey()), COSEKey.class);
        if (key == null || key.getAlgorithm() == null || key.getAlgorithm().getValue() != assertion.algorithm()) {
            throw new BadSignatureException("another algorithm");
        }
        AttestedCredentialData data =
                new AttestedCredentialData(AAGUID.ZERO, Base64Url.bytes(assertion.credentialId()), key);
        return new CredentialRecordImpl(
                new NoneAttestationStatement(), null, null, null, 0, data, null, null, null, null);
    }

    private static AssertionFault kind(RuntimeException e) {
        if (e instanceof BadChallengeException) {
            return AssertionFault.CHALLENGE;
        }
        if (e instanceof BadOriginException || e instanceof BadRpIdException) {
            return AssertionFault.PLACE;
        }
        if (e instanceof UserNotVerifiedException || e instanceof UserNotPresentException) {
            return AssertionFault.UNVERIFIED;
        }
        return e instanceof BadSignatureException ? AssertionFault.SIGNATURE : AssertionFault.UNREADABLE;
    }
}
