package org.scrubline.platform.security;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.platform.AccountLetters;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional
class StoredAccountLetters implements AccountLetters {

    /** OWASP ASVS 5.0, 6.4.3 as this project reads it: a code sent for a new password ends within a quarter of an hour. */
    private static final Duration LINK_VALID = Duration.ofMinutes(15);

    private static final Duration CONFIRM_VALID = Duration.ofHours(1);

    /** However often a stranger asks, the owner's mailbox stays usable. */
    private static final int LETTERS = 3;

    private static final Duration HOUR = Duration.ofHours(1);

    private final AddressStore addresses;
    private final LinkStore links;
    private final Allowances allowances;
    private final Memberships memberships;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    StoredAccountLetters(
            AddressStore addresses,
            LinkStore links,
            Allowances allowances,
            Memberships memberships,
            ApplicationEventPublisher events,
            Clock clock) {
        this.addresses = addresses;
        this.links = links;
        this.allowances = allowances;
        this.memberships = memberships;
        this.events = events;
        this.clock = clock;
    }

    @Override
    public List<Letter> forgotten(String asked) {
        return addresses.serving().stream()
                .filter(one -> Stream.of(one.username(), one.address())
                        .map(AccountLetters::asked)
                        .anyMatch(asked::equals))
                .flatMap(one -> letter(one).stream())
                .toList();
    }

    private Optional<Letter> letter(AddressStore.Serving to) {
        Optional<SignedIn> owner = memberships.find(to.account(), TenantScope.require());
        if (owner.isEmpty()
                || allowances.take("letters:" + to.account(), LETTERS, HOUR).isPresent()) {
            return Optional.empty();
        }
        String code = SecretCode.create();
        Instant now = clock.instant();
        links.insert(SecretCode.hash(code), to.account(), now, now.plus(LINK_VALID));
        events.publishEvent(new AccountChanged("password-code-sent", owner.get()));
        return Optional.of(new Letter(to.address(), to.username(), code));
    }

    @Override
    public Optional<Letter> confirm(UUID account) {
        String code = SecretCode.create();
        return addresses
                .putCode(account, SecretCode.hash(code), clock.instant().plus(CONFIRM_VALID))
                .map(address -> new Letter(address, "", code));
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<String> address(UUID account) {
        return addresses.of(account, true);
    }
}
