package org.scrubline.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Answers to the host names of the settings and to no other, so that no request can make this server speak of itself by a
 * name somebody else owns. Health is exempt: whoever watches a server asks it by its number, and it says nothing but how it is.
 */
@Component
@EnableConfigurationProperties(HostSettings.class)
@Order(Ordered.HIGHEST_PRECEDENCE)
class HostFilter extends OncePerRequestFilter {

    private static final String HEALTH = "/actuator/health";

    private final Set<String> hosts;

    HostFilter(HostSettings settings) {
        this.hosts = settings.hosts().stream()
                .map(host -> host.strip().toLowerCase(Locale.ROOT))
                .filter(host -> !host.isEmpty())
                .collect(Collectors.toSet());
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String path = request.getRequestURI();
        return hosts.isEmpty() || path.equals(HEALTH) || path.startsWith(HEALTH + "/");
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (hosts.contains(request.getServerName().toLowerCase(Locale.ROOT))) {
            chain.doFilter(request, response);
        } else {
            response.sendError(HttpServletResponse.SC_BAD_REQUEST);
        }
    }
}
