package org.scrubline.platform;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.RequestContextHolder;
import org.springframework.web.context.request.ServletRequestAttributes;

/** Tells where the work of this thread comes from. The framework's request filter has set the request aside for it. */
@Component
public class Origins {

    private static final String VERSION = Optional.ofNullable(
                    Origins.class.getPackage().getImplementationVersion())
            .orElse("development");

    /** The origin of what this thread does now. */
    public Origin current() {
        return RequestContextHolder.getRequestAttributes() instanceof ServletRequestAttributes attributes
                ? of(attributes.getRequest())
                : new Origin(null, null, Origin.SYSTEM, VERSION);
    }

    private static Origin of(HttpServletRequest request) {
        HttpSession session = request.getSession(false);
        return new Origin(
                person(),
                session == null ? null : Sha256.hex(session.getId()),
                Optional.ofNullable(request.getRemoteAddr()).orElse(""),
                VERSION);
    }

    private static @Nullable SignedIn person() {
        Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
        return authentication != null && authentication.getPrincipal() instanceof SignedIn who ? who : null;
    }
}
