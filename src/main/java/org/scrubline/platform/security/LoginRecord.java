package org.scrubline.platform.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.scrubline.platform.Origins;
import org.scrubline.platform.RefusedLogins;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Keeps what came of log-ins. A refused one is counted under the hashed name, with the same statement whether or not
 * such an account exists, so that neither the time it takes nor the row tells.
 */
@Service
@Transactional
class LoginRecord implements RefusedLogins {

    private static final Duration KEPT = Duration.ofDays(90);

    private final LoginRefusalStore refusals;
    private final LinkStore links;
    private final Allowances allowances;
    private final EntryRule rule;
    private final Devices devices;
    private final Origins origins;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    LoginRecord(
            LoginRefusalStore refusals,
            LinkStore links,
            Allowances allowances,
            EntryRule rule,
            Devices devices,
            Origins origins,
            ApplicationEventPublisher events,
            Clock clock) {
        this.refusals = refusals;
        this.links = links;
        this.allowances = allowances;
        this.rule = rule;
        this.devices = devices;
        this.origins = origins;
        this.events = events;
        this.clock = clock;
    }

    /** Runs in the scope of the organisation entered; {@code shown} are the factors. */
    public void entered(SignedIn person, Collection<? extends GrantedAuthority> shown) {
        if (rule.of(person, shown) != EntryRule.Standing.SHOW) {
            events.publishEvent(new LoggedIn(person));
            devices.entered(person);
        }
    }

    /** Counts a refused log-in; {@code blocked} when the password was not even looked at. */
    public void refused(String username, boolean blocked) {
        refusals.count(
                LoginThrottle.account(username),
                blocked,
                clock.instant(),
                origins.current().address());
    }

    @Override
    public void forgetOld() {
        Instant now = clock.instant();
        refusals.forget(now.minus(KEPT));
        links.forget(now);
        allowances.forgetOld();
    }

    @Override
    @Transactional(readOnly = true)
    public List<Refused> of(Collection<String> usernames, Instant since) {
        if (usernames.isEmpty()) {
            return List.of();
        }
        Map<String, String> bySubject = usernames.stream()
                .collect(Collectors.toMap(LoginThrottle::account, Function.identity(), (one, other) -> one));
        return refusals.refused(bySubject, since).stream()
                .sorted(Comparator.comparing(Refused::lastAt).reversed())
                .toList();
    }
}
