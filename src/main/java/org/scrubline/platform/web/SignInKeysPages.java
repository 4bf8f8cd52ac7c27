package org.scrubline.platform.web;

import jakarta.servlet.http.HttpSession;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.passkey.Challenges;
import org.springframework.stereotype.Component;

/** Makes the page of a person's own passkeys. */
@Component
class SignInKeysPages {

    private final Passkeys passkeys;

    SignInKeysPages(Passkeys passkeys) {
        this.passkeys = passkeys;
    }

    SignInKeysPage of(SignedIn who, boolean recent, HttpSession session) {
        UUID account = who.accountId();
        List<SignInKeysPage.KeyLine> lines =
                passkeys.of(account).stream().map(SignInKeysPages::line).toList();
        return recent
                ? new SignInKeysPage(lines, true, null, passkeys.offer(who, Challenges.REGISTER.current(session)))
                : new SignInKeysPage(
                        lines,
                        false,
                        passkeys.ask(account, Challenges.CONFIRM.current(session))
                                .orElse(null),
                        null);
    }

    /**
     * One key of this person.
     *
     * @throws NotFound when it is somebody else's or nobody's
     */
    Passkeys.Passkey own(SignedIn who, UUID id) {
        return passkeys.of(who.accountId()).stream()
                .filter(key -> key.id().equals(id))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private static SignInKeysPage.KeyLine line(Passkeys.Passkey key) {
        return new SignInKeysPage.KeyLine(
                key.id(), key.label(), AccountTimes.at(key.createdAt()), AccountTimes.atOrNever(key.lastUsedAt()));
    }
}
