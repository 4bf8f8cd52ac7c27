package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.security.web.csrf.CsrfToken;
import org.springframework.security.web.csrf.CsrfTokenRepository;
import org.springframework.security.web.csrf.HttpSessionCsrfTokenRepository;

/**
 * Keeps the token of forms in the session, and opens a session for one only where a page may show it. Something sent without
 * a session is refused in any case; a session opened with that refusal would take the place of the one in which somebody
 * is just logging in, in another tab of the same browser.
 */
class FormTokens implements CsrfTokenRepository {

    private static final Set<String> SHOW_PAGES = Set.of("GET", "HEAD");

    private final HttpSessionCsrfTokenRepository session = new HttpSessionCsrfTokenRepository();

    @Override
    public CsrfToken generateToken(HttpServletRequest request) {
        return session.generateToken(request);
    }

    @Override
    public void saveToken(@Nullable CsrfToken token, HttpServletRequest request, HttpServletResponse response) {
        if (request.getSession(false) != null || SHOW_PAGES.contains(request.getMethod())) {
            session.saveToken(token, request, response);
        }
    }

    @Override
    public @Nullable CsrfToken loadToken(HttpServletRequest request) {
        return session.loadToken(request);
    }
}
