package org.scrubline.support;

import org.scrubline.platform.SignedIn;
import org.scrubline.platform.security.Principals;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.FactorGrantedAuthority;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.request.RequestPostProcessor;

/** Requests by a person who is logged in; roles are still read from the database, as in a real session. */
public final class LogIn {

    private LogIn() {}

    public static RequestPostProcessor as(SignedIn who) {
        return SecurityMockMvcRequestPostProcessors.authentication(UsernamePasswordAuthenticationToken.authenticated(
                Principals.of(who),
                null,
                java.util.List.of(FactorGrantedAuthority.fromAuthority(FactorGrantedAuthority.PASSWORD_AUTHORITY))));
    }
}
