package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.Serializable;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;
import org.springframework.stereotype.Component;

/**
 * Which organisation a session has entered (decision 0033). Whoever belongs to one enters it; whoever belongs to several
 * chooses, and may choose anew. The word of an organisation's provider counts there and nowhere else.
 */
@Component
public class OrganisationEntry {

    private static final String CHOSEN = "scrubline.organisation";
    private static final HttpSessionCsrfTokenRepository TOKENS = new HttpSessionCsrfTokenRepository();

    private final AccountStore accounts;
    private final Memberships memberships;
    private final LoginRecord record;

    OrganisationEntry(AccountStore accounts, Memberships memberships, LoginRecord record) {
        this.accounts = accounts;
        this.memberships = memberships;
        this.record = record;
    }

    /** Kept in the session; it holds for this account alone, whoever logs in next. */
    private record Chosen(UUID account, UUID organisation) implements Serializable {}

    /**
     * Who a session is.
     *
     * @param who the person in the organisation entered, or in the first one while nothing is chosen; null for nobody
     * @param undecided whether an organisation has to be chosen first
     */
    record Entry(@Nullable SignedIn who, boolean undecided) {}

    /** Everything the account may enter, by name of the organisation. */
    public List<SignedIn> open(UUID account) {
        return accounts.organisations(account).stream()
                .flatMap(organisation -> in(account, organisation).stream())
                .sorted(Comparator.comparing(SignedIn::organisationName).thenComparing(SignedIn::tenantId))
                .toList();
    }

    /** Whether a session with these factors may change from one organisation to another. */
    public boolean several(UUID account, Collection<? extends GrantedAuthority> shown) {
        return !vouched(shown)
                && accounts.organisations(account).size() > 1
                && open(account).size() > 1;
    }

    /** Whether a session with these factors was opened by a provider, which vouches for one organisation. */
    public static boolean vouched(Collection<? extends GrantedAuthority> shown) {
        return shown.stream()
                .map(GrantedAuthority::getAuthority)
                .anyMatch(FactorGrantedAuthority.AUTHORIZATION_CODE_AUTHORITY::equals);
    }

    /** Who the session is now, read anew. */
    Entry of(AccountPrincipal account, Collection<? extends GrantedAuthority> shown, @Nullable HttpSession session) {
        Optional<UUID> entered = vouched(shown) ? Optional.of(account.tenantId()) : chosen(account, session);
        if (entered.isPresent()) {
            return new Entry(in(account.accountId(), entered.get()).orElse(null), false);
        }
        List<SignedIn> open = open(account.accountId());
        return new Entry(open.isEmpty() ? null : open.get(0), open.size() > 1);
    }

    /** At log-in: forgets what the session chose before, and enters where there is nothing to choose. */
    void begin(AccountPrincipal account, Collection<? extends GrantedAuthority> shown, HttpSession session) {
        session.removeAttribute(CHOSEN);
        Entry entry = of(account, shown, session);
        if (entry.who() != null && !entry.undecided()) {
            session.setAttribute(
                    CHOSEN, new Chosen(account.accountId(), entry.who().tenantId()));
        }
    }

    /**
     * Enters one of the account's organisations; the session goes on under a new name.
     *
     * @param shown the factors the session was opened with
     * @throws NotFound when the account may not enter it
     */
    public void enter(
            UUID account,
            String organisation,
            List<String> shown,
            HttpServletRequest request,
            HttpServletResponse answer) {
        SignedIn who = open(account).stream()
                .filter(one -> one.tenantId().toString().equals(organisation))
                .findFirst()
                .orElseThrow(NotFound::new);
        request.getSession().setAttribute(CHOSEN, new Chosen(account, who.tenantId()));
        request.changeSessionId();
        TOKENS.saveToken(TOKENS.generateToken(request), request, answer);
        List<FactorGrantedAuthority> factors =
                shown.stream().map(FactorGrantedAuthority::fromAuthority).toList();
        TenantScope.run(who.tenantId(), () -> record.entered(who, factors));
    }

    private static Optional<UUID> chosen(AccountPrincipal account, @Nullable HttpSession session) {
        return session != null
                        && session.getAttribute(CHOSEN) instanceof Chosen chosen
                        && chosen.account().equals(account.accountId())
                ? Optional.of(chosen.organisation())
                : Optional.empty();
    }

    private Optional<SignedIn> in(UUID account, UUID organisation) {
        return TenantScope.call(organisation, () -> memberships.find(account, organisation));
    }
}
