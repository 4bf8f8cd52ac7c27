package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.util.Optional;
import org.scrubline.platform.SignedIn;

/**
 * What a request still lacks though the password was right. The person is nobody on every page until it is there.
 *
 * @param who whose password it was
 * @param path page that asks for it
 */
public record SecondStep(SignedIn who, String path) {

    private static final String ATTRIBUTE = SecondStep.class.getName();

    /** The step this request waits for, if it waits for one. */
    public static Optional<SecondStep> of(HttpServletRequest request) {
        return Optional.ofNullable((SecondStep) request.getAttribute(ATTRIBUTE));
    }

    void on(HttpServletRequest request) {
        request.setAttribute(ATTRIBUTE, this);
    }
}
