package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.scrubline.platform.provider.Connection;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.provider.ProviderAnswers;
import org.scrubline.platform.provider.ProviderFault;
import org.scrubline.platform.provider.ProviderFault.Reason;
import org.scrubline.platform.provider.ProviderIdentity;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.authentication.AbstractAuthenticationProcessingFilter;

/** Where a provider leads back to: logs in, or connects the account of whoever went there to have it connected. */
class ProviderLogInFilter extends AbstractAuthenticationProcessingFilter {

    static final String PATH = "/login/from/";
    private static final String OWN_PAGE = "/account/provider";
    private static final String STAYS = ProviderLogInFilter.class.getName();

    private final Connections connections;
    private final ProviderAnswers answers;
    private final ProviderLogIns logIns;
    private final Clock clock;

    ProviderLogInFilter(
            Connections connections, ProviderAnswers answers, ProviderLogIns logIns, LogInMarks marks, Clock clock) {
        super(request -> ProviderStartFilter.named(connections, request, PATH).isPresent());
        this.connections = connections;
        this.answers = answers;
        this.logIns = logIns;
        this.clock = clock;
        LogInSession.renewedBy(this);
        setAuthenticationSuccessHandler(marks);
        setAuthenticationFailureHandler((request, response, refused) ->
                response.sendRedirect(page(refused, request.getAttribute(STAYS) != null)));
    }

    /** The page that says what came of it: the log-in, or one's own page for somebody who is, and stays, logged in. */
    static String page(AuthenticationException refused, boolean stays) {
        Reason reason = refused instanceof ProviderFault fault ? fault.reason() : Reason.REFUSED;
        return (stays ? OWN_PAGE : "/login") + "?provider=" + reason.word();
    }

    static Optional<SignedIn> own() {
        return Optional.ofNullable(SecurityContextHolder.getContext().getAuthentication())
                .map(Authentication::getPrincipal)
                .filter(SignedIn.class::isInstance)
                .map(SignedIn.class::cast);
    }

    /** Null, after an answer, when somebody stays logged in as they were. */
    @Override
    public @Nullable Authentication attemptAuthentication(HttpServletRequest request, HttpServletResponse response)
            throws IOException {
        Connection connection =
                ProviderStartFilter.named(connections, request, PATH).orElseThrow();
        // A refusal empties the context before it is answered.
        own().ifPresent(who -> request.setAttribute(STAYS, who));
        Optional<ProviderWish> wish = ProviderWish.take(request.getSession(), clock.instant());
        ProviderIdentity shown = answers.answer(connection, request, response);
        Optional<SignedIn> owner = own().filter(who -> asked(who, wish));
        if (owner.isPresent()) {
            logIns.link(owner.get(), connection, shown);
            response.sendRedirect(OWN_PAGE + "?linked");
            return null;
        }
        AccountPrincipal account = TenantScope.call(
                connection.organisation(),
                () -> wish.orElse(null) instanceof ProviderWish.Invited invited
                        ? logIns.welcome(connection, shown, invited.codeHash())
                        : logIns.enter(connection, shown));
        UsernamePasswordAuthenticationToken entered =
                UsernamePasswordAuthenticationToken.authenticated(account, null, factors(shown));
        entered.setDetails(authenticationDetailsSource.buildDetails(request));
        return entered;
    }

    private static boolean asked(SignedIn who, Optional<ProviderWish> wish) {
        return wish.orElse(null) instanceof ProviderWish.OwnAccount own
                && own.accountId().equals(who.accountId());
    }

    private static List<FactorGrantedAuthority> factors(ProviderIdentity shown) {
        return Stream.concat(
                        Stream.of(FactorGrantedAuthority.AUTHORIZATION_CODE_AUTHORITY),
                        shown.twoFactors() ? Stream.of(EntryRule.PROVIDER) : Stream.empty())
                .map(FactorGrantedAuthority::fromAuthority)
                .toList();
    }
}
