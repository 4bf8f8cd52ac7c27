package org.scrubline.command;

/** Wrong use of the line; the message is a sentence for the user. */
final class WrongUse extends RuntimeException {

    WrongUse(String message) {
        super(message);
    }
}
