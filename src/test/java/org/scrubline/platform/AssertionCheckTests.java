package org.scrubline.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Held against the test vectors of Web Authentication Level 3 (W3C, section 16, https://www.w3.org/TR/webauthn-3/):
 * challenge, key coordinates, flags, client data and signature as published there for the relying party example.org. The
 * ids of the credentials, which no assertion signs, are cut to 32 bytes.
 */
class AssertionCheckTests {

    /** Section 16.6: ES256, the user verified. */
    private static final Assertion VERIFIED = vector(
            "ef1deba56dce48f674a447ccf63b9599258ce87648e5c396f2ef0ca1da460e3b",
            "3a761a4e1674ad6c4305869435c0eee9c286172c229bb91b48b4ada140c08634",
            "3b8176b7504489cc593046d7988abb7905a742de6ac2cdc748a873c663e90cb1",
            "1436d5edc9a75f23999eef9d5950a5c2455514ee1014084720f841a06b828a11",
            "0d",
            "7b2274797065223a22776562617574686e2e676574222c226368616c6c656e6765223a22377833727057334f"
                    + "53505a307045664d396a75566d53574d36485a4935634f573875384d6f647047446a73222c226f726967696e"
                    + "223a2268747470733a2f2f6578616d706c652e6f7267222c2263726f73734f726967696e223a66616c73657d",
            "304502203ecef83fb12a0cae7841055f9f87103a99fd14b424194bbf06c4623d3ee6e3fd022100d2ace346db"
                    + "262b1374a6b70faa51f518a42ddca13a4125ce6f5052a75bac9fb6");

    /** Section 16.2: ES256, the user present but not verified. */
    private static final Assertion UNVERIFIED = vector(
            "39c0e7521417ba54d43e8dc95174f423dee9bf3cd804ff6d65c857c9abf4d408",
            "f91f391db4c9b2fde0ea70189cba3fb63f579ba6122b33ad94ff3ec330084be4",
            "afefa16f97ca9b2d23eb86ccb64098d20db90856062eb249c33a9b672f26df61",
            "930a56b87a2fca66334b03458abf879717c12cc68ed73290af2e2664796b9220",
            "19",
            "7b2274797065223a22776562617574686e2e676574222c226368616c6c656e6765223a224f63446e55685158"
                    + "756c5455506f334a5558543049393770767a7a59425039745a63685879617630314167222c226f726967696e"
                    + "223a2268747470733a2f2f6578616d706c652e6f7267222c2263726f73734f726967696e223a66616c73657d",
            "3046022100f50a4e2e4409249c4a853ba361282f09841df4dd4547a13a87780218deffcd380221008480ac0f"
                    + "0b93538174f575bf11a1dd5d78c6e486013f937295ea13653e331e87");

    /** Section 16.4: ES256, verified, asked for by a page within another site's page. */
    private static final Assertion FRAMED = vector(
            "876aa517ba83fdee65fcffdbca4c84eeae5d54f8041a1fc85c991e5bbb273137",
            "6e1050c0d2ca2f07c755cb2c66a74c64fa43065c18f938354d9915db2bd5ce57",
            "22200a473f90b11078851550d03b4e44a2279f8c4eca27b3153dedfe03e4e97d",
            "cbd0be95e746ad6f5a8191be11756e4c0420e72f65b466d39bc56b8b123a9c6e",
            "05",
            "7b2274797065223a22776562617574686e2e676574222c226368616c6c656e6765223a226832716c46377144"
                    + "5f65356c5f505f62796b7945377135645650674547685f49584a6b655737736e4d5463222c226f726967696e"
                    + "223a2268747470733a2f2f6578616d706c652e6f7267222c2263726f73734f726967696e223a747275652c22"
                    + "657874726144617461223a22636c69656e74446174614a534f4e206d617920626520657874656e6465642077"
                    + "697468206164646974696f6e616c206669656c647320696e20746865206675747572652c2073756368206173"
                    + "20746869733a2039327063545644304162792d713464746d6a36656667227d",
            "3046022100eb12fcf23b12764c0f122e22371fab92e283879fd798f38ee1841c951b6e40e7022100c76237ff"
                    + "9db77b3c56f30837cda6a09acfa2e915544e609c0733b1184036d1cf");

    private static final byte[] HASH = bytes(VERIFIED.challenge());

    /** The fields of an assertion: how to read one, and how to put another text in its place. */
    private enum Field {
        CHALLENGE(Assertion::challenge, (a, text) -> with(a, 0, text)),
        PUBLIC_KEY(Assertion::publicKey, (a, text) -> with(a, 2, text)),
        AUTHENTICATOR_DATA(Assertion::authenticatorData, (a, text) -> with(a, 4, text)),
        CLIENT_DATA(Assertion::clientData, (a, text) -> with(a, 5, text)),
        SIGNATURE(Assertion::signature, (a, text) -> with(a, 6, text));

        private final transient Function<Assertion, String> read;
        private final transient BiFunction<Assertion, String, Assertion> put;

        Field(Function<Assertion, String> read, BiFunction<Assertion, String, Assertion> put) {
            this.read = read;
            this.put = put;
        }
    }

    @Test
    void anAssertionPublishedByTheStandardStands() {
        assertThat(AssertionCheck.fault(VERIFIED, HASH)).isEmpty();
    }

    @Test
    void oneWhoseDeviceDidNotCheckItsOwnerDoesNot() {
        assertThat(AssertionCheck.fault(UNVERIFIED, bytes(UNVERIFIED.challenge())))
                .contains(AssertionFault.UNVERIFIED);
    }

    @Test
    void oneAskedForFromWithinAnotherSiteDoesNot() {
        assertThat(AssertionCheck.fault(FRAMED, bytes(FRAMED.challenge()))).isPresent();
    }

    @Test
    void itStandsForNoOtherHash() {
        byte[] other = HASH.clone();
        other[31] ^= 1;
        assertThat(AssertionCheck.fault(VERIFIED, other)).contains(AssertionFault.CHALLENGE);
        assertThat(AssertionCheck.fault(with(VERIFIED, 0, Base64Url.text(other)), other))
                .as("even when the stored challenge is changed to fit")
                .contains(AssertionFault.CHALLENGE);
    }

    @Test
    void nothingStandsForAChallengeThatIsNone() {
        assertThat(AssertionCheck.fault(with(VERIFIED, 0, ""), new byte[0])).contains(AssertionFault.CHALLENGE);
    }

    @ParameterizedTest
    @EnumSource
    void oneBitChangedInAnyOfTheBytesIsFound(Field field) {
        byte[] original = bytes(field.read.apply(VERIFIED));
        List<Integer> unseen = new ArrayList<>();
        for (int bit = 0; bit < original.length * 8; bit++) {
            byte[] changed = original.clone();
            changed[bit / 8] ^= (byte) (1 << bit % 8);
            if (AssertionCheck.fault(field.put.apply(VERIFIED, Base64Url.text(changed)), HASH)
                    .isEmpty()) {
                unseen.add(bit);
            }
        }
        assertThat(original).isNotEmpty();
        assertThat(unseen).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void aTextThatOnlyReadsLikeTheBytesIsFound(Field field) {
        String padded = field.read.apply(VERIFIED) + "=";
        assertThat(AssertionCheck.fault(field.put.apply(VERIFIED, padded), HASH))
                .isPresent();
    }

    @Test
    void oneBitChangedInTheRelyingPartyOrTheOriginIsFound() {
        for (int part : new int[] {7, 8}) {
            byte[] original = (part == 7 ? VERIFIED.rpId() : VERIFIED.origin()).getBytes(StandardCharsets.ISO_8859_1);
            for (int bit = 0; bit < original.length * 8; bit++) {
                byte[] changed = original.clone();
                changed[bit / 8] ^= (byte) (1 << bit % 8);
                String text = new String(changed, StandardCharsets.ISO_8859_1);
                assertThat(AssertionCheck.fault(with(VERIFIED, part, text), HASH))
                        .as(text)
                        .isPresent();
            }
        }
    }

    @Test
    void anAlgorithmThatIsNotTheKeysIsFound() {
        assertThat(AssertionCheck.fault(with(VERIFIED, 3, "-257"), HASH)).contains(AssertionFault.SIGNATURE);
        assertThat(AssertionCheck.fault(with(VERIFIED, 3, "-7"), HASH)).isEmpty();
    }

    @Test
    void theHashOfAnAssertionCoversTheIdNoSignatureCovers() {
        Assertion other = with(VERIFIED, 1, UNVERIFIED.credentialId());
        assertThat(AssertionCheck.fault(other, HASH)).isEmpty();
        assertThat(other.hash()).isNotEqualTo(VERIFIED.hash());
    }

    private static Assertion vector(
            String challenge, String id, String x, String y, String flags, String clientData, String signature) {
        return new Assertion(
                base64(challenge),
                base64(id),
                // COSE_Key of RFC 9053 section 7.1.1: {1: 2, 3: -7, -1: 1, -2: x, -3: y}
                base64("a5010203262001215820" + x + "225820" + y),
                -7,
                // SHA-256 of example.org, flags, counter 0
                base64("bfabc37432958b063360d3ad6461c9c4735ae7f8edd46592a5e0f01452b2e4b5" + flags + "00000000"),
                base64(clientData),
                base64(signature),
                "example.org",
                "https://example.org");
    }

    private static Assertion with(Assertion a, int part, String text) {
        String[] parts = {
            a.challenge(),
            a.credentialId(),
            a.publicKey(),
            Long.toString(a.algorithm()),
            a.authenticatorData(),
            a.clientData(),
            a.signature(),
            a.rpId(),
            a.origin()
        };
        parts[part] = text;
        return new Assertion(
                parts[0],
                parts[1],
                parts[2],
                Long.parseLong(parts[3]),
                parts[4],
                parts[5],
                parts[6],
                parts[7],
                parts[8]);
    }

    private static byte[] bytes(String base64) {
        return Base64Url.bytes(base64);
    }

    private static String base64(String hex) {
        return Base64Url.text(HexFormat.of().parseHex(hex));
    }
}
