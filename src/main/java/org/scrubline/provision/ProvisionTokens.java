package org.scrubline.provision;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SecretCode;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The tokens by which an organisation's directory is known. They are stored as hashes and shown once. */
@Service
@Transactional
public class ProvisionTokens {

    /** Longest label in characters. */
    static final int LABEL_LENGTH = 60;

    /** 160 bits, so that a plain hash of it can be stored. */
    private static final int TOKEN_LENGTH = 32;

    private final TokenStore store;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ProvisionTokens(TokenStore store, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.events = events;
        this.clock = clock;
    }

    /** A token that is good; {@code lastUsedAt} is null until it is used. */
    public record Token(
            UUID id,
            String label,
            Instant createdAt,
            @Nullable Instant lastUsedAt) {}

    /** The organisation a token speaks for, outside any scope; empty for one that is not, or no longer, good. */
    public Optional<UUID> organisation(String token) {
        return store.use(SecretCode.hash(token), now());
    }

    /** The good ones of the organisation, oldest first. */
    @Transactional(readOnly = true)
    public List<Token> open() {
        return store.open();
    }

    /** A new token; this is the one moment to show it. */
    public Attempt<String> make(String label) {
        String name = FreeText.tidy(label);
        Optional<Refusal> unfit = name.isEmpty()
                ? Optional.of(Refusal.at("label", "refusal.name.empty"))
                : FreeText.check("label", name, LABEL_LENGTH);
        if (unfit.isPresent()) {
            return Attempt.refused(unfit.get());
        }
        String token = SecretCode.create(TOKEN_LENGTH);
        UUID id = UUID.randomUUID();
        store.insert(id, SecretCode.hash(token), name, now());
        events.publishEvent(new TokenChanged("provision-token-made", id, name));
        return Attempt.done(token);
    }

    /**
     * Ends a token at once.
     *
     * @return its label
     * @throws NotFound when the organisation has no such token that is good
     */
    public String revoke(UUID id) {
        String label = store.revoke(id, now()).orElseThrow(NotFound::new);
        events.publishEvent(new TokenChanged("provision-token-revoked", id, label));
        return label;
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
