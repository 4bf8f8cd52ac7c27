package org.scrubline.signoff.web;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.signoff.SignedRecords;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.HandlerMapping;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Stands before every page of a sheet: once its scorer has signed it, reading leads to the record and
 * changing is 409, until they write its next version.
 */
@Component
class SignedSheetGate implements HandlerInterceptor, WebMvcConfigurer {

    private final SignedRecords records;

    SignedSheetGate(SignedRecords records) {
        this.records = records;
    }

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this)
                .addPathPatterns("/sheets/{id}", "/sheets/{id}/**")
                .excludePathPatterns("/sheets/{id}/sign", "/sheets/{id}/signing", "/sheets/{id}/signed");
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler)
            throws IOException {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        UUID sheet = sheet(request);
        if (sheet == null
                || authentication == null
                || !(authentication.getPrincipal() instanceof SignedIn who)
                || !records.signed(who, sheet)) {
            return true;
        }
        String record = "/sheets/" + sheet + "/signed";
        if (!"GET".equals(request.getMethod())) {
            throw StaleData.signed(record);
        }
        response.sendRedirect(request.getContextPath() + record);
        return false;
    }

    private static @Nullable UUID sheet(HttpServletRequest request) {
        if (request.getAttribute(HandlerMapping.URI_TEMPLATE_VARIABLES_ATTRIBUTE) instanceof Map<?, ?> variables
                && variables.get("id") instanceof String id) {
            try {
                return UUID.fromString(id);
            } catch (IllegalArgumentException noId) {
                return null;
            }
        }
        return null;
    }
}
