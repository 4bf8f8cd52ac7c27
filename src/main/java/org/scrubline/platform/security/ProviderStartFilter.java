package org.scrubline.platform.security;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Optional;
import org.scrubline.platform.provider.Connection;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.provider.ProviderAnswers;
import org.scrubline.platform.provider.ProviderFault;
import org.springframework.http.HttpMethod;
import org.springframework.security.web.servlet.util.matcher.PathPatternRequestMatcher;
import org.springframework.security.web.util.matcher.RequestMatcher;
import org.springframework.web.filter.OncePerRequestFilter;

/** Leads to the provider of a connection. Without a connection of that name there is no such address. */
class ProviderStartFilter extends OncePerRequestFilter {

    static final String PATH = "/login/with/";

    private final Connections connections;
    private final ProviderAnswers answers;

    ProviderStartFilter(Connections connections, ProviderAnswers answers) {
        this.connections = connections;
        this.answers = answers;
    }

    /** The connection whose name follows the path in the address of a request, if there is one. */
    static Optional<Connection> named(Connections connections, HttpServletRequest request, String path) {
        RequestMatcher.MatchResult match = PathPatternRequestMatcher.withDefaults()
                .matcher(HttpMethod.GET, path + "{name}")
                .matcher(request);
        return Optional.ofNullable(match.getVariables().get("name")).flatMap(connections::named);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        Optional<Connection> connection = named(connections, request, PATH);
        if (connection.isEmpty()) {
            chain.doFilter(request, response);
            return;
        }
        response.sendRedirect(provider(connection.get(), request, response));
    }

    private String provider(Connection connection, HttpServletRequest request, HttpServletResponse response) {
        try {
            return answers.ask(connection, request, response);
        } catch (ProviderFault fault) {
            return ProviderLogInFilter.page(fault, ProviderLogInFilter.own().isPresent());
        }
    }
}
