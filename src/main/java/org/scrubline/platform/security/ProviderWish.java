package org.scrubline.platform.security;

import jakarta.servlet.http.HttpSession;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/** What somebody wants to have connected when they come back from a provider. It waits with their session. */
public sealed interface ProviderWish extends Serializable {

    Duration WAITS = Duration.ofMinutes(10);

    String ATTRIBUTE = "scrubline.provider-wish";

    Instant askedAt();

    /** The account whose owner, logged in, asked for it. */
    record OwnAccount(UUID accountId, Instant askedAt) implements ProviderWish {}

    /** The account of an invitation, instead of a password for it; the code is looked up when they come back. */
    record Invited(String codeHash, Instant askedAt) implements ProviderWish {}

    default void waitIn(HttpSession session) {
        session.setAttribute(ATTRIBUTE, this);
    }

    /** What waits, used up by this call. */
    static Optional<ProviderWish> take(HttpSession session, Instant now) {
        Object waiting = session.getAttribute(ATTRIBUTE);
        session.removeAttribute(ATTRIBUTE);
        return waiting instanceof ProviderWish wish
                        && now.isBefore(wish.askedAt().plus(WAITS))
                ? Optional.of(wish)
                : Optional.empty();
    }
}
