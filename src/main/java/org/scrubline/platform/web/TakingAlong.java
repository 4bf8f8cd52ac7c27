package org.scrubline.platform.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TakesAlong;
import org.scrubline.platform.security.Allowances;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Counts the files each person takes along and answers 429 when it is enough for now. */
@Component
class TakingAlong implements HandlerInterceptor, WebMvcConfigurer {

    private static final Duration HOUR = Duration.ofHours(1);

    private final Allowances allowances;

    TakingAlong(Allowances allowances) {
        this.allowances = allowances;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
            throws IOException {
        TakesAlong file = handler instanceof HandlerMethod method ? method.getMethodAnnotation(TakesAlong.class) : null;
        Optional<Duration> wait = file == null ? Optional.empty() : wait(file.value());
        if (wait.isPresent()) {
            response.setHeader(
                    HttpHeaders.RETRY_AFTER, String.valueOf(wait.get().toSeconds() + 1));
            response.sendError(HttpStatus.TOO_MANY_REQUESTS.value());
        }
        return wait.isEmpty();
    }

    private Optional<Duration> wait(TakesAlong.Size size) {
        Authentication who = SecurityContextHolder.getContext().getAuthentication();
        return who != null && who.getPrincipal() instanceof SignedIn person
                ? allowances.take("files:" + size + ":" + person.accountId(), size.anHour(), HOUR)
                : Optional.empty();
    }
}
