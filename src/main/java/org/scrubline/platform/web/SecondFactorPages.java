package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.QrCode;
import org.scrubline.platform.SecondFactorRule;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.factor.SecondFactors;
import org.scrubline.platform.factor.SecondFactors.Offer;
import org.scrubline.platform.passkey.Challenges;
import org.springframework.stereotype.Component;

/** Makes the page of a person's own second factor. */
@Component
class SecondFactorPages {

    private static final String WAITING = "scrubline.code-app";

    private final SecondFactors factors;
    private final Passkeys passkeys;
    private final SecondFactorRule rule;

    SecondFactorPages(SecondFactors factors, Passkeys passkeys, SecondFactorRule rule) {
        this.factors = factors;
        this.passkeys = passkeys;
        this.rule = rule;
    }

    SecondFactorPage of(SignedIn who, boolean recent, HttpSession session) {
        UUID account = who.accountId();
        Optional<SecondFactors.App> app = factors.app(account);
        return new SecondFactorPage(
                rule.required(who),
                app.map(one -> line(one, factors.recoveryCodesLeft(account))).orElse(null),
                recent && app.isEmpty() ? setUp(who, session) : null,
                !passkeys.of(account).isEmpty(),
                recent || app.isPresent()
                        ? null
                        : passkeys.ask(account, Challenges.CONFIRM.current(session))
                                .orElse(null));
    }

    private static SecondFactorPage.AppLine line(SecondFactors.App app, int left) {
        return new SecondFactorPage.AppLine(
                AccountTimes.at(app.createdAt()), AccountTimes.atOrNever(app.lastUsedAt()), left);
    }

    private SecondFactorPage.SetUp setUp(SignedIn who, HttpSession session) {
        Offer offer = factors.offer(who, waiting(session)).orElseGet(() -> {
            session.setAttribute(WAITING, factors.newSecret(who.accountId()));
            return factors.offer(who, waiting(session)).orElseThrow();
        });
        return new SecondFactorPage.SetUp(QrCode.of(offer.address()), offer.secret());
    }

    /** The sealed secret this session was shown and nobody has confirmed yet; empty when there is none. */
    static String waiting(HttpSession session) {
        return session.getAttribute(WAITING) instanceof String sealed ? sealed : "";
    }

    static void forget(HttpSession session) {
        session.removeAttribute(WAITING);
    }
}
