package org.scrubline.platform.factor;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;
import org.bouncycastle.util.encoders.Base32;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Guesses;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;

/** The second factor of a person's own account. There is no way to anybody else's. */
@Service
public class SecondFactors {

    private static final String FIELD = "code";
    private static final String ISSUER = "Scrubline";

    private final FactorDesk desk;
    private final SecretBox box;
    private final Guesses guesses;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    SecondFactors(FactorDesk desk, SecretBox box, Guesses guesses, Clock clock) {
        this.desk = desk;
        this.box = box;
        this.guesses = guesses;
        this.clock = clock;
    }

    /** An authenticator app; {@code lastUsedAt} is null until it served a log-in. */
    public record App(Instant createdAt, @Nullable Instant lastUsedAt) {}

    /**
     * What an app needs to make codes.
     *
     * @param secret to type, base32 (RFC 4648 section 6) in groups of four
     * @param address to read with a camera, an otpauth URI
     */
    public record Offer(String secret, String address) {}

    public Optional<App> app(UUID account) {
        return desk.app(account).map(app -> new App(app.createdAt(), app.lastUsedAt()));
    }

    /** Recovery codes that still open. */
    public int recoveryCodesLeft(UUID account) {
        return desk.codesLeft(account);
    }

    /** A new secret, sealed; it waits with the session until a first code shows that the app has it. */
    public String newSecret(UUID account) {
        byte[] secret = new byte[TimeCode.SECRET_BYTES];
        random.nextBytes(secret);
        return box.seal(secret, purpose(account));
    }

    /** What to show of a sealed secret; empty when it cannot be read any more. */
    public Optional<Offer> offer(SignedIn who, String sealed) {
        return box.open(sealed, purpose(who.accountId()))
                .map(Base32::toBase32String)
                .map(secret -> new Offer(secret.replaceAll("(.{4})(?=.)", "$1 "), address(who.username(), secret)));
    }

    private static String address(String username, String secret) {
        String name = URLEncoder.encode(username, StandardCharsets.UTF_8);
        return "otpauth://totp/" + ISSUER + ":" + name + "?secret=" + secret + "&issuer=" + ISSUER;
    }

    /**
     * Adds the app that makes codes of this secret.
     *
     * @param code its first code
     * @return ten recovery codes to show once
     */
    public Attempt<List<String>> add(SignedIn who, String sealed, String code) {
        OptionalLong step = box.open(sealed, purpose(who.accountId()))
                .map(secret -> TimeCode.matching(secret, plain(code), clock.instant()))
                .orElseGet(OptionalLong::empty);
        if (step.isEmpty()) {
            return Attempt.refused(Refusal.at(FIELD, "refusal.code.first"));
        }
        List<String> codes = desk.add(who, sealed, step.getAsLong());
        return codes.isEmpty() ? Attempt.refused(Refusal.at(FIELD, "refusal.code.known")) : Attempt.done(codes);
    }

    /** Takes the app away, with its recovery codes, against one of their codes. */
    public Attempt<SignedIn> remove(SignedIn who, String code) {
        Attempt<SignedIn> shown = check(who, code);
        if (shown instanceof Attempt.Done) {
            desk.remove(who);
        }
        return shown;
    }

    /** Ten new recovery codes to show once, against a code of the app. */
    public Attempt<List<String>> renewRecoveryCodes(SignedIn who, String code) {
        return check(who, code).fold(shown -> Attempt.done(desk.makeCodes(who)), Attempt::refused);
    }

    /**
     * Checks a code of the app, or a recovery code, and uses it up. Wrong ones make the next ones wait, apart from
     * passwords: a right password must not give new guesses.
     *
     * @param who the person whose password was right
     */
    public Attempt<SignedIn> check(SignedIn who, String typed) {
        String subject = "code:" + who.accountId();
        if (guesses.blockedFor(subject).isPresent()) {
            return Attempt.refused(Refusal.at(FIELD, "refusal.code.wait"));
        }
        if (right(who, plain(typed))) {
            guesses.succeeded(subject);
            return Attempt.done(who);
        }
        guesses.failed(subject);
        if (guesses.blockedFor(subject).isPresent()) {
            desk.tried(who);
        }
        return Attempt.refused(Refusal.at(FIELD, "refusal.code.wrong"));
    }

    private boolean right(SignedIn who, String code) {
        if (!code.matches("\\d{" + TimeCode.DIGITS + "}")) {
            return desk.useRecoveryCode(who, code);
        }
        OptionalLong step = desk.app(who.accountId())
                .flatMap(app -> box.open(app.sealedSecret(), purpose(who.accountId())))
                .map(secret -> TimeCode.matching(secret, code, clock.instant()))
                .orElseGet(OptionalLong::empty);
        return step.isPresent() && desk.useStep(who.accountId(), step.getAsLong());
    }

    private static String plain(String typed) {
        return typed.replaceAll("\\s", "");
    }

    private static String purpose(UUID account) {
        return "code-app:" + account;
    }
}
