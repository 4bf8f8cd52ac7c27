package org.scrubline.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.io.Serializable;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.ReadAgain;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Keeps in the session, as hashes alone, which texts a writer was asked to read again. */
@Component
@Order(1)
class ReadAgainFilter extends OncePerRequestFilter {

    private static final String REMEMBERED = "scrubline.read-again";
    private static final int MOST = 40;

    /** What a session holds, oldest first. */
    private record Remembered(List<String> hashes) implements Serializable {}

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        return !request.getMethod().equals("POST");
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Set<String> asked = remembered(request.getSession(false));
        int before = asked.size();
        ReadAgain.begin(asked);
        try {
            chain.doFilter(request, response);
        } finally {
            ReadAgain.end();
        }
        HttpSession session = request.getSession(false);
        if (asked.size() > before && session != null) {
            session.setAttribute(
                    REMEMBERED,
                    new Remembered(asked.stream()
                            .skip(Math.max(0, asked.size() - MOST))
                            .toList()));
        }
    }

    private static Set<String> remembered(@Nullable HttpSession session) {
        return session != null && session.getAttribute(REMEMBERED) instanceof Remembered before
                ? new LinkedHashSet<>(before.hashes())
                : new LinkedHashSet<>();
    }
}
