package org.scrubline.backup;

import org.springframework.core.NestedExceptionUtils;

/** The innermost reason of an exception, as one line for an operator. */
final class Reason {

    private Reason() {}

    static String of(Exception exception) {
        String message = NestedExceptionUtils.getMostSpecificCause(exception).getMessage();
        return message == null
                ? exception.getClass().getSimpleName()
                : message.lines().findFirst().orElse("no reason was given");
    }
}
