package org.scrubline.platform.security;

import jakarta.servlet.http.HttpSession;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.stream.Stream;
import org.scrubline.platform.FreshLogIn;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Whether the person at this session showed a password or passkey just now, as pages ask that change how one logs in. */
@Component
public class StepUp implements FreshLogIn {

    private static final Duration WINDOW = Duration.ofMinutes(5);
    private static final String SHOWN_AT = "scrubline.shown-at";

    private final Clock clock;

    StepUp(Clock clock) {
        this.clock = clock;
    }

    /** Within the last five minutes, at log-in or since. */
    public boolean recent(Authentication who, HttpSession session) {
        Instant earliest = clock.instant().minus(WINDOW);
        Stream<Instant> logIn = who.getAuthorities().stream()
                .filter(FactorGrantedAuthority.class::isInstance)
                .map(factor -> ((FactorGrantedAuthority) factor).getIssuedAt());
        Stream<Instant> since = Stream.of(session.getAttribute(SHOWN_AT) instanceof Instant at ? at : Instant.MIN);
        return Stream.concat(logIn, since).filter(Objects::nonNull).anyMatch(earliest::isBefore);
    }

    @Override
    public boolean fresh(HttpSession session) {
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        return who != null && recent(who, session);
    }

    /** A right credential was shown at this session now. It goes on under a new name, as after a log-in. */
    public void shown(HttpSession session) {
        session.setAttribute(SHOWN_AT, clock.instant());
        if (RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes) {
            attributes.getRequest().changeSessionId();
        }
    }
}
