package org.scrubline.platform.security;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.InvitationLife;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SecretCode;
import org.scrubline.platform.passkey.PasskeyAnswers;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
class StoredAccounts implements Accounts, UserDetailsService {

    private final AccountStore store;
    private final PasswordEncoder encoder;
    private final PasswordRule rule;
    private final PasskeyAnswers passkeys;
    private final LoginThrottle throttle;
    private final SecurityNotes notes;
    private final Clock clock;

    /** Stands where no password was chosen yet, so that such an account takes as long to refuse as any other. */
    private final String nobodys;

    StoredAccounts(
            AccountStore store,
            PasswordEncoder encoder,
            PasswordRule rule,
            PasskeyAnswers passkeys,
            LoginThrottle throttle,
            SecurityNotes notes,
            Clock clock) {
        this.notes = notes;
        this.store = store;
        this.encoder = encoder;
        this.rule = rule;
        this.passkeys = passkeys;
        this.throttle = throttle;
        this.clock = clock;
        this.nobodys = Objects.requireNonNull(encoder.encode(SecretCode.create()));
    }

    @Override
    @Transactional(readOnly = true)
    public UserDetails loadUserByUsername(String username) {
        return store.byUsername(username)
                .map(account -> account.getPassword() == null ? account.withPassword(nobodys) : account)
                .orElseThrow(() -> new UsernameNotFoundException("unknown"));
    }

    @Override
    @Transactional(readOnly = true)
    public boolean none() {
        return store.none();
    }

    @Override
    @Transactional
    public Attempt<UUID> open(String username, UUID tenantId) {
        return open(username, tenantId, false);
    }

    @Override
    @Transactional
    public Attempt<UUID> openShared(String username, UUID tenantId) {
        return open(username, tenantId, true);
    }

    private Attempt<UUID> open(String username, UUID tenantId, boolean shared) {
        String name = username.strip();
        if (!name.matches("[\\p{L}\\p{N}._-]{3,60}")) {
            return Attempt.refused(Refusal.at("username", "refusal.username.form"));
        }
        UUID id = UUID.randomUUID();
        return store.insert(new AccountStore.Account(id, name, null, true, shared), tenantId, clock.instant())
                ? Attempt.done(id)
                : Attempt.refused(Refusal.at("username", "refusal.username.taken", name));
    }

    @Override
    @Transactional
    public String invite(UUID accountId, InvitationLife life) {
        requireNoPassword(accountId);
        String code = SecretCode.create();
        Instant now = clock.instant();
        store.endInvitations(accountId, now);
        store.insertInvitation(SecretCode.hash(code), accountId, now, now.plus(life.time()));
        return code;
    }

    @Override
    @Transactional
    public Attempt<UUID> acceptInvitation(String code, String password) {
        String hash = SecretCode.hash(code);
        Optional<Refusal> weak = rule.check(
                password, store.invited(hash, clock.instant()).map(List::of).orElseGet(List::of));
        if (weak.isPresent()) {
            return Attempt.refused(weak.get());
        }
        Optional<UUID> account = store.useInvitation(hash, clock.instant());
        account.ifPresent(id -> store.setPassword(id, encoder.encode(password)));
        return account.map(Attempt::done)
                .orElseGet(() -> Attempt.refused(Refusal.at("code", "refusal.invitation.code")));
    }

    @Override
    @Transactional
    public Attempt<UUID> setFirstPassword(UUID accountId, String password) {
        String username = store.byId(accountId).orElseThrow().username();
        Optional<Refusal> weak = rule.check(password, List.of(username));
        if (weak.isPresent()) {
            return Attempt.refused(weak.get());
        }
        requireNoPassword(accountId);
        store.setPassword(accountId, encoder.encode(password));
        return Attempt.done(accountId);
    }

    /** Whoever could choose the password of somebody else could sign as them. */
    private void requireNoPassword(UUID accountId) {
        if (store.byId(accountId).orElseThrow().passwordHash() != null) {
            throw new IllegalStateException("account " + accountId + " has a password, which only its owner changes");
        }
    }

    @Override
    public Attempt<UUID> confirmPassword(UUID accountId, String password) {
        AccountStore.Account account = store.byId(accountId).orElseThrow();
        if (!account.enabled()) {
            return Attempt.refused(Refusal.at("authority", "refusal.account.closed"));
        }
        String subject = LoginThrottle.account(account.username());
        if (throttle.blockedFor(subject).isPresent()) {
            return Attempt.refused(Refusal.at("password", "refusal.password.wait"));
        }
        if (account.passwordHash() == null) {
            return Attempt.refused(Refusal.at("password", "refusal.password.none"));
        }
        if (encoder.matches(password, account.passwordHash())) {
            throttle.succeeded(subject);
            return Attempt.done(accountId);
        }
        throttle.failed(subject);
        if (throttle.blockedFor(subject).isPresent()) {
            notes.wrongPasswords(accountId);
        }
        return Attempt.refused(Refusal.at("password", "refusal.password.wrong"));
    }

    @Override
    public Attempt<Recognised> confirm(UUID accountId, Credential credential, byte[] challenge) {
        if (credential instanceof Credential.PasskeyAssertion assertion) {
            return confirmPasskey(accountId, assertion.json(), challenge);
        }
        String password = ((Credential.Password) credential).text();
        return confirmPassword(accountId, password)
                .fold(id -> Attempt.done(new Recognised.ByPassword(id)), Attempt::refused);
    }

    private Attempt<Recognised> confirmPasskey(UUID accountId, String json, byte[] challenge) {
        AccountStore.Account account = store.byId(accountId).orElseThrow();
        String subject = LoginThrottle.account(account.username());
        Attempt<Recognised> shown = passkeys.check(json, challenge)
                .fold(
                        who -> account.enabled() && who.accountId().equals(accountId)
                                ? Attempt.done(who)
                                : Attempt.refused(Refusal.at("passkey", "refusal.passkey.unknown")),
                        Attempt::refused);
        if (shown instanceof Attempt.Done) {
            throttle.succeeded(subject);
        } else {
            throttle.failed(subject);
        }
        return shown;
    }
}
