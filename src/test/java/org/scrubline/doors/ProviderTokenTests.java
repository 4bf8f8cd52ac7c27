package org.scrubline.doors;

import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWT;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;
import com.nimbusds.jwt.SignedJWT;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.scrubline.platform.ScrublineClock;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

/**
 * Tokens that differ from a right one in one thing each (OpenID Connect Core 1.0, section 3.1.3.7; RFC 8725). The right one
 * gets as far as the question whose account it is; every other one does not.
 */
@DoorsTest
class ProviderTokenTests {

    private static final String RIGHT = "/login?provider=unknown";
    private static final String REFUSED = "/login?provider=refused";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    ScrublineClock clock;

    ProviderBrowser browser;

    @BeforeEach
    void open() throws Exception {
        browser = new ProviderBrowser(mockMvc);
        // The provider's keys are known from here on, so that the next request it gets is for the token.
        browser.through("orlin", "somebody", Map.of());
    }

    static Map<String, UnaryOperator<JWTClaimsSet.Builder>> wrongClaims() {
        Instant real = new Date().toInstant();
        Map<String, UnaryOperator<JWTClaimsSet.Builder>> wrong = new LinkedHashMap<>();
        wrong.put("of another issuer", claims -> claims.issuer(RunningProvider.issuer("halden")));
        wrong.put("for another client", claims -> claims.audience("another-client"));
        wrong.put("for several without saying which", claims -> claims.audience(List.of(RunningProvider.CLIENT, "b")));
        wrong.put(
                "given to another client",
                claims -> claims.audience(List.of(RunningProvider.CLIENT, "b")).claim("azp", "b"));
        wrong.put(
                "run out",
                claims -> claims.issueTime(Date.from(real.minus(Duration.ofHours(2))))
                        .expirationTime(Date.from(real.minus(Duration.ofHours(1)))));
        wrong.put("of the future", claims -> claims.issueTime(Date.from(real.plus(Duration.ofHours(1)))));
        wrong.put("not valid yet", claims -> claims.notBeforeTime(Date.from(real.plus(Duration.ofHours(1)))));
        wrong.put("without an end", claims -> claims.expirationTime(null));
        wrong.put("about nobody", claims -> claims.subject(null));
        wrong.put("about an empty name", claims -> claims.subject(""));
        wrong.put("about a name too long", claims -> claims.subject("s".repeat(256)));
        wrong.put("for another question", claims -> claims.claim("nonce", "of-another-question"));
        wrong.put("for no question", claims -> claims.claim("nonce", null));
        return wrong;
    }

    static Stream<String> wrong() {
        return wrongClaims().keySet().stream();
    }

    @Test
    void aTokenThatIsRightIsTaken() throws Exception {
        ask(question -> signed(claims(question).build()), RIGHT);
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aTokenIsRefusedThatIs(String what) throws Exception {
        UnaryOperator<JWTClaimsSet.Builder> change = wrongClaims().get(what);
        ask(question -> signed(change.apply(claims(question)).build()), REFUSED);
    }

    @Test
    void aTokenWithoutASignatureIsRefused() throws Exception {
        ask(question -> new PlainJWT(claims(question).build()), REFUSED);
    }

    @Test
    void aTokenSignedByAnotherKeyIsRefusedWhateverItCallsTheKey() throws Exception {
        RSAKey foreign = new RSAKeyGenerator(2048).generate();
        ask(question -> signed(claims(question).build(), JWSAlgorithm.RS256, new RSASSASigner(foreign)), REFUSED);
    }

    @Test
    void aTokenSignedWithThePublicKeyAsASecretIsRefused() throws Exception {
        byte[] known = key().toRSAPublicKey().getEncoded();
        ask(question -> signed(claims(question).build(), JWSAlgorithm.HS256, new MACSigner(known)), REFUSED);
    }

    @Test
    void aTokenChangedAfterItsSignatureIsRefused() throws Exception {
        ask(
                question -> {
                    String[] parts =
                            signed(claims(question).build()).serialize().split("\\.");
                    String other = new PlainJWT(
                                    claims(question).subject("somebody-else").build())
                            .serialize()
                            .split("\\.")[1];
                    return SignedJWT.parse(parts[0] + "." + other + "." + parts[2]);
                },
                REFUSED);
    }

    @Test
    void anAnswerThatIsNoTokenIsRefused() throws Exception {
        for (String body : List.of(
                "{}",
                "no json",
                "{\"access_token\":\"a\",\"token_type\":\"Bearer\"}",
                "{\"access_token\":\"a\",\"token_type\":\"Bearer\",\"id_token\":\"a.b.c\"}")) {
            URI answer = browser.answered(browser.question("orlin"));
            HandedToken.next(body);
            browser.back(answer).andExpect(redirectedUrl(REFUSED));
        }
    }

    private interface Token {
        JWT of(URI question) throws Exception;
    }

    private void ask(Token token, String where) throws Exception {
        URI question = browser.question("orlin");
        URI answer = browser.answered(question);
        HandedToken.next("{\"access_token\":\"a\",\"token_type\":\"Bearer\",\"id_token\":\"%s\"}"
                .formatted(token.of(question).serialize()));
        browser.back(answer).andExpect(redirectedUrl(where));
    }

    private JWTClaimsSet.Builder claims(URI question) {
        Instant now = clock.instant();
        return new JWTClaimsSet.Builder()
                .issuer(RunningProvider.issuer("orlin"))
                .audience(RunningProvider.CLIENT)
                .subject("subject-of-a-token")
                .issueTime(Date.from(now))
                .expirationTime(Date.from(now.plusSeconds(300)))
                .claim("nonce", ProviderBrowser.parameters(question).get("nonce"));
    }

    /** With the provider's own key. */
    private static SignedJWT signed(JWTClaimsSet claims) throws JOSEException {
        return signed(claims, JWSAlgorithm.RS256, new RSASSASigner(key()));
    }

    private static SignedJWT signed(JWTClaimsSet claims, JWSAlgorithm way, JWSSigner signer) throws JOSEException {
        SignedJWT token =
                new SignedJWT(new JWSHeader.Builder(way).keyID(key().getKeyID()).build(), claims);
        token.sign(signer);
        return token;
    }

    private static RSAKey key() {
        return RunningProvider.KEYS.signingKey("orlin").toRSAKey();
    }
}
