package org.scrubline.platform.factor;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.SignedIn;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What is stored about second factors, each change with its entry. */
@Service
@Transactional
class FactorDesk {

    private static final int RECOVERY_CODES = 10;

    /** 125 bits, so that a plain hash of it can be stored: nobody finds such a code by trying. */
    private static final int RECOVERY_CODE_LENGTH = 25;

    private final FactorStore store;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    FactorDesk(FactorStore store, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.events = events;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Optional<FactorStore.App> app(UUID account) {
        return store.app(account);
    }

    @Transactional(readOnly = true)
    public int codesLeft(UUID account) {
        return store.codesLeft(account);
    }

    /**
     * Adds an app, with new recovery codes.
     *
     * @param step the one its first code was made in, which is used up
     * @return the recovery codes; empty when there is an app already
     */
    public List<String> add(SignedIn who, String sealedSecret, long step) {
        if (!store.insertApp(who.accountId(), sealedSecret, step, now())) {
            return List.of();
        }
        tell("code-app-added", who, null);
        return makeCodes(who);
    }

    public void remove(SignedIn who) {
        store.deleteCodes(who.accountId());
        if (store.deleteApp(who.accountId())) {
            tell("code-app-removed", who, null);
        }
    }

    /** Ten new recovery codes in place of the old ones; this is the one moment to show them. */
    public List<String> makeCodes(SignedIn who) {
        List<String> codes = Stream.generate(() -> SecretCode.create(RECOVERY_CODE_LENGTH))
                .limit(RECOVERY_CODES)
                .toList();
        store.replaceCodes(who.accountId(), codes.stream().map(SecretCode::hash).toList(), now());
        tell("recovery-codes-made", who, String.valueOf(codes.size()));
        return codes;
    }

    /** False when a code of this step, or of a later one, was used before. */
    public boolean useStep(UUID account, long step) {
        return store.claimStep(account, step, now());
    }

    /** False when the code is none of this account's, or was used before. */
    public boolean useRecoveryCode(SignedIn who, String code) {
        boolean right = store.useCode(who.accountId(), SecretCode.hash(code), now());
        if (right) {
            tell("recovery-code-used", who, String.valueOf(store.codesLeft(who.accountId())));
        }
        return right;
    }

    /** Somebody who knows the password tried codes until they had to wait. */
    public void tried(SignedIn who) {
        tell("wrong-codes", who, null);
    }

    private void tell(String action, SignedIn who, @Nullable String after) {
        events.publishEvent(new FactorChanged(action, who, after));
    }

    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
