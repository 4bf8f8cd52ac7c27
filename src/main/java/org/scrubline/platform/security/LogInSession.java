package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.scrubline.platform.SignedIn;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.authentication.AbstractAuthenticationProcessingFilter;
import org.springframework.security.web.authentication.session.ChangeSessionIdAuthenticationStrategy;
import org.springframework.security.web.authentication.session.CompositeSessionAuthenticationStrategy;
import org.springframework.security.web.authentication.session.SessionAuthenticationStrategy;
import org.springframework.security.web.context.HttpSessionSecurityContextRepository;
import org.springframework.security.web.csrf.CsrfAuthenticationStrategy;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;
import org.springframework.stereotype.Component;

/** What every kind of log-in does to the session: a new name, a new token, and who showed which factors. */
@Component
public class LogInSession {

    private static final HttpSessionSecurityContextRepository REMEMBERED = new HttpSessionSecurityContextRepository();

    private static SessionAuthenticationStrategy renewal() {
        return new CompositeSessionAuthenticationStrategy(List.of(
                new ChangeSessionIdAuthenticationStrategy(),
                new CsrfAuthenticationStrategy(new HttpSessionCsrfTokenRepository())));
    }

    static void renewedBy(AbstractAuthenticationProcessingFilter filter) {
        filter.setSecurityContextRepository(REMEMBERED);
        filter.setSessionAuthenticationStrategy(renewal());
    }

    /** The factors a log-in was made with. */
    static List<String> shown(Authentication entered) {
        return entered.getAuthorities().stream()
                .filter(FactorGrantedAuthority.class::isInstance)
                .map(GrantedAuthority::getAuthority)
                .filter(Objects::nonNull)
                .toList();
    }

    /** Somebody who showed these factors before, and a right code now. */
    static Authentication withCode(SignedIn who, List<String> before) {
        AccountPrincipal account = new AccountPrincipal(who.accountId(), who.tenantId(), who.username(), null, true);
        return UsernamePasswordAuthenticationToken.authenticated(
                account,
                null,
                Stream.concat(before.stream(), Stream.of(EntryRule.CODE))
                        .distinct()
                        .map(FactorGrantedAuthority::fromAuthority)
                        .toList());
    }

    /** A person who is logged in showed a right code: the session counts as opened with two factors from now on. */
    public void codeShown(
            SignedIn who, Authentication before, HttpServletRequest request, HttpServletResponse response) {
        Authentication complete = withCode(who, shown(before));
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(complete);
        renewal().onAuthentication(complete, request, response);
        REMEMBERED.saveContext(context, request, response);
    }
}
