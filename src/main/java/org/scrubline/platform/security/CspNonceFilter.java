package org.scrubline.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.security.SecureRandom;
import java.util.Base64;
import org.springframework.web.filter.OncePerRequestFilter;

/** A nonce per response. Nothing runs on a page but our own scripts, nothing loads from another host. */
class CspNonceFilter extends OncePerRequestFilter {

    private static final String POLICY = "default-src 'none'; script-src 'self' 'nonce-%s'; style-src 'self';"
            + " img-src 'self' data:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self';"
            + " base-uri 'none'; frame-ancestors 'none'";

    private final SecureRandom random = new SecureRandom();

    @Override
    protected boolean shouldNotFilterErrorDispatch() {
        return false;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        byte[] bytes = new byte[16];
        random.nextBytes(bytes);
        String nonce = Base64.getEncoder().encodeToString(bytes);
        request.setAttribute("cspNonce", nonce);
        response.setHeader("Content-Security-Policy", POLICY.formatted(nonce));
        chain.doFilter(request, response);
    }
}
