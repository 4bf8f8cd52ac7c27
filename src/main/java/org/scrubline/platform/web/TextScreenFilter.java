package org.scrubline.platform.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.scrubline.platform.FreeText;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Answers 400 to parameters that hold characters which are not text; no page has a use for them. */
@Component
@Order(0)
class TextScreenFilter extends OncePerRequestFilter {

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        boolean forbidden = request.getParameterMap().entrySet().stream()
                .flatMap(TextScreenFilter::texts)
                .anyMatch(FreeText::hasForbiddenCharacter);
        if (forbidden) {
            response.sendError(HttpServletResponse.SC_BAD_REQUEST);
            return;
        }
        chain.doFilter(request, response);
    }

    private static Stream<String> texts(Map.Entry<String, String[]> parameter) {
        return Stream.concat(Stream.of(parameter.getKey()), Arrays.stream(parameter.getValue()));
    }
}
