package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.scrubline.platform.AccountMail;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.stereotype.Component;

/** The way back in for whoever forgot the password: a code by mail, and a new password for the code. */
@Component
public class NewPassword {

    private static final int OF_A_NAME = 5;
    private static final int OF_AN_ADDRESS = 30;
    private static final Duration HOUR = Duration.ofHours(1);

    private final Allowances allowances;
    private final AccountMail mail;
    private final LinkStore links;
    private final NewPasswordDesk desk;
    private final LoginThrottle throttle;
    private final OpenSessions sessions;
    private final Clock clock;

    NewPassword(
            Allowances allowances,
            AccountMail mail,
            LinkStore links,
            NewPasswordDesk desk,
            LoginThrottle throttle,
            OpenSessions sessions,
            Clock clock) {
        this.allowances = allowances;
        this.mail = mail;
        this.links = links;
        this.desk = desk;
        this.throttle = throttle;
        this.sessions = sessions;
        this.clock = clock;
    }

    /** Whether a code can be asked for at all. */
    public boolean isOffered() {
        return mail.isSet();
    }

    /**
     * Asks for a code. Whether anybody has this name or address shows neither in the answer nor in the time it takes: who it
     * is, is looked up later, in the background.
     *
     * @return how long to wait when this name, or this place, asked too often; empty when it was taken
     */
    public Optional<Duration> ask(String typed, HttpServletRequest request) {
        String name = SecretCode.hash(FreeText.tidy(typed));
        Optional<Duration> wait = allowances
                .take("ask-place:" + SecretCode.hash(request.getRemoteAddr()), OF_AN_ADDRESS, HOUR)
                .or(() -> allowances.take("ask-name:" + name, OF_A_NAME, HOUR));
        if (wait.isEmpty()) {
            mail.forgotten(typed);
        }
        return wait;
    }

    /**
     * Puts a new password in place of the forgotten one and ends all sessions and codes of the account. A second factor is
     * asked for at the log-in that follows, as always.
     *
     * @return whose it is; the fields of a refusal are {@code code} and {@code password}. A password that cannot be taken
     *     does not use the code up.
     */
    public Attempt<SignedIn> choose(String code, String fresh, HttpServletRequest request) {
        String hash = SecretCode.hash(code);
        Attempt<SignedIn> chosen = links.owner(hash, clock.instant())
                .map(owner -> TenantScope.call(owner.tenant(), () -> desk.choose(owner, hash, fresh, request)))
                .orElseGet(() -> Attempt.refused(Refusal.at("code", "refusal.link.code")));
        if (chosen instanceof Attempt.Done<SignedIn> done) {
            // After the transaction: both take a connection of their own, and many with one code would wait for each
            // other.
            throttle.succeeded(LoginThrottle.account(done.value().username()));
            sessions.endAll(done.value().username());
        }
        return chosen;
    }
}
