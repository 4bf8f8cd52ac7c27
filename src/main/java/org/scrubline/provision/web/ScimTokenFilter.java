package org.scrubline.provision.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.scrubline.provision.ProvisionTokens;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;

/** Lets a request in by its token alone (RFC 6750), into the scope of the token's organisation. A log-in counts nothing. */
class ScimTokenFilter extends OncePerRequestFilter {

    private static final Logger log = LoggerFactory.getLogger(ScimTokenFilter.class);
    private static final String SCHEME = "Bearer ";
    private static final int LONGEST = 200;

    private final ProvisionTokens tokens;

    ScimTokenFilter(ProvisionTokens tokens) {
        this.tokens = tokens;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Optional<UUID> organisation = Optional.ofNullable(request.getHeader(HttpHeaders.AUTHORIZATION))
                .filter(header ->
                        header.regionMatches(true, 0, SCHEME, 0, SCHEME.length()) && header.length() < LONGEST)
                .flatMap(header -> tokens.organisation(header.substring(SCHEME.length())));
        if (organisation.isEmpty()) {
            log.warn("Security note: a directory without a good token, from {}", request.getRemoteAddr());
            refuse(response);
            return;
        }
        continueIn(organisation.get(), request, response, chain);
    }

    private static void refuse(HttpServletResponse response) throws IOException {
        ScimError error = new ScimError(401, null, "A token is needed that an administrator made and nobody ended.");
        response.setStatus(error.status());
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
        response.setContentType(ScimJson.TYPE.toString());
        response.getOutputStream().write(ScimJson.error(error).toString().getBytes(StandardCharsets.UTF_8));
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
}
