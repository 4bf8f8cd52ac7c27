package org.scrubline.provision.web;

import java.util.Map;
import java.util.Set;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Wording;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;

/** Refusals in the form a directory reads. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
@RestControllerAdvice(assignableTypes = {ScimUsersController.class, ScimDiscoveryController.class})
class ScimRefusals {

    private static final Set<String> TAKEN = Set.of("refusal.username.taken", "refusal.provision.external-id.taken");
    private static final Map<String, String> ATTRIBUTES = Map.of("username", "userName", "printedName", "displayName");

    private final Wording wording;

    ScimRefusals(Wording wording) {
        this.wording = wording;
    }

    /** A refusal of the service; a name that is taken is a conflict (RFC 7644, section 3.3). */
    ScimError error(Refusal reason) {
        String detail = ATTRIBUTES.getOrDefault(reason.field(), reason.field()) + ": "
                + wording.text(reason.messageKey(), reason.arguments().toArray());
        if (TAKEN.contains(reason.messageKey())) {
            return new ScimError(409, "uniqueness", detail);
        }
        return ScimError.invalid(
                reason.messageKey().equals("refusal.provision.given-once") ? "mutability" : "invalidValue", detail);
    }

    @ExceptionHandler
    ResponseEntity<String> refused(ScimError error) {
        return ScimJson.refusal(error);
    }

    @ExceptionHandler({NotFound.class, MethodArgumentTypeMismatchException.class})
    ResponseEntity<String> unknown() {
        return ScimJson.refusal(ScimError.unknown());
    }
}
