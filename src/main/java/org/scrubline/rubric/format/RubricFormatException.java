package org.scrubline.rubric.format;

/** A rubric file says something the format does not allow; the message names file, step and key. */
public final class RubricFormatException extends RuntimeException {

    private final int line;

    RubricFormatException(String message, int line) {
        super(message);
        this.line = line;
    }

    /** Where in the text, from 1 on; 0 when only the message says it. */
    int line() {
        return line;
    }
}
