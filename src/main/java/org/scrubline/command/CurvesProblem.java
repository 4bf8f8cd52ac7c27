package org.scrubline.command;

/** Something in the user's files or options that stops the command; the message is a sentence for the user. */
final class CurvesProblem extends RuntimeException {

    CurvesProblem(String message) {
        super(message);
    }
}
