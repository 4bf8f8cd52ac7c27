package org.scrubline.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.scrubline.platform.Memberships;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.GrantedAuthority;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * For the length of one request: replaces what the session remembers by who the person is now, and opens the tenant
 * scope. A role taken away a second ago is gone here. The replaced context is never saved to the session.
 */
class MembershipFilter extends OncePerRequestFilter {

    private final Memberships memberships;

    MembershipFilter(Memberships memberships) {
        this.memberships = memberships;
    }

    /** Files that are the same for everyone need no person, so no session is read for them. */
    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String path = request.getServletPath();
        return path.startsWith("/css/") || path.startsWith("/js/") || path.startsWith("/img/");
    }

    @Override
    protected boolean shouldNotFilterErrorDispatch() {
        return false;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        SecurityContext remembered = SecurityContextHolder.getContext();
        Authentication authentication = remembered.getAuthentication();
        if (authentication == null || !(authentication.getPrincipal() instanceof AccountPrincipal account)) {
            chain.doFilter(request, response);
            return;
        }
        Optional<SignedIn> who =
                TenantScope.call(account.tenantId(), () -> memberships.find(account.accountId(), account.tenantId()));
        SecurityContext fresh = SecurityContextHolder.createEmptyContext();
        who.ifPresent(person -> fresh.setAuthentication(token(person, authentication)));
        SecurityContextHolder.setContext(fresh);
        try {
            if (who.isPresent()) {
                continueIn(account, request, response, chain);
            } else {
                chain.doFilter(request, response);
            }
        } finally {
            SecurityContextHolder.setContext(remembered);
        }
    }

    private static void continueIn(
            AccountPrincipal account, HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        List<ServletException> failed = new ArrayList<>();
        try {
            TenantScope.run(account.tenantId(), () -> {
                try {
                    chain.doFilter(request, response);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                } catch (ServletException e) {
                    failed.add(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        if (!failed.isEmpty()) {
            throw failed.get(0);
        }
    }

    private static Authentication token(SignedIn person, Authentication remembered) {
        List<GrantedAuthority> authorities = new ArrayList<>();
        remembered.getAuthorities().stream()
                .filter(FactorGrantedAuthority.class::isInstance)
                .forEach(authorities::add);
        person.grants().stream()
                .map(grant -> grant.role().authority())
                .distinct()
                .map(SimpleGrantedAuthority::new)
                .forEach(authorities::add);
        return UsernamePasswordAuthenticationToken.authenticated(person, null, authorities);
    }
}
