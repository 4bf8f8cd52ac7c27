package org.scrubline.rubric.format;

/** A rubric file says something the format does not allow; the message names file, step and key. */
public final class RubricFormatException extends RuntimeException {

    RubricFormatException(String message) {
        super(message);
    }
}
