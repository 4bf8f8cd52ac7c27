package org.scrubline.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
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

    private static final String UNDECIDED = MembershipFilter.class.getName() + ".undecided";

    private final OrganisationEntry organisations;

    MembershipFilter(OrganisationEntry organisations) {
        this.organisations = organisations;
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
        OrganisationEntry.Entry entry =
                organisations.of(account, authentication.getAuthorities(), request.getSession(false));
        SignedIn who = entry.who();
        request.setAttribute(UNDECIDED, entry.undecided());
        SecurityContext fresh = SecurityContextHolder.createEmptyContext();
        if (who != null) {
            fresh.setAuthentication(token(who, authentication));
        }
        SecurityContextHolder.setContext(fresh);
        try {
            if (who != null) {
                continueIn(who.tenantId(), request, response, chain);
            } else {
                chain.doFilter(request, response);
            }
        } finally {
            SecurityContextHolder.setContext(remembered);
        }
    }

    /** Whether the person of this request has to choose an organisation before anything else. */
    static boolean undecided(HttpServletRequest request) {
        return Boolean.TRUE.equals(request.getAttribute(UNDECIDED));
    }

    private static void continueIn(
            UUID organisation, HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        List<ServletException> failed = new ArrayList<>();
        try {
            TenantScope.run(organisation, () -> {
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
