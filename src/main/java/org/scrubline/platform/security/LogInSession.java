package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.stream.Stream;
import org.scrubline.platform.SignedIn;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
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

    /** Somebody who showed the password and these factors now. */
    static Authentication entered(SignedIn who, List<String> factors) {
        AccountPrincipal account = new AccountPrincipal(who.accountId(), who.tenantId(), who.username(), null, true);
        return UsernamePasswordAuthenticationToken.authenticated(
                account,
                null,
                Stream.concat(Stream.of(FactorGrantedAuthority.PASSWORD_AUTHORITY), factors.stream())
                        .map(FactorGrantedAuthority::fromAuthority)
                        .toList());
    }

    /** A person who is logged in showed a right code: the session counts as opened with two factors from now on. */
    public void codeShown(SignedIn who, HttpServletRequest request, HttpServletResponse response) {
        Authentication complete = entered(who, List.of(EntryRule.CODE));
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(complete);
        renewal().onAuthentication(complete, request, response);
        REMEMBERED.saveContext(context, request, response);
    }
}
