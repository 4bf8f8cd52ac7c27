package org.scrubline.platform.security;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.Optional;
import org.scrubline.platform.SignedIn;

/**
 * What a request still lacks though what was shown is right. The person is nobody on every page until it is there.
 *
 * @param who whose password it was, or whom a provider vouched for
 * @param path page that asks for it, or for the organisation to enter
 * @param shown the factors that were right
 */
public record SecondStep(SignedIn who, String path, List<String> shown) {

    private static final String ATTRIBUTE = SecondStep.class.getName();

    public SecondStep {
        shown = List.copyOf(shown);
    }

    /** The step this request waits for, if it waits for one. */
    public static Optional<SecondStep> of(HttpServletRequest request) {
        return Optional.ofNullable((SecondStep) request.getAttribute(ATTRIBUTE));
    }

    void on(HttpServletRequest request) {
        request.setAttribute(ATTRIBUTE, this);
    }
}
