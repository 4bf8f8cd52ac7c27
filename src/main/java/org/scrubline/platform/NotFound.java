package org.scrubline.platform;

/** Nothing here for this person: unknown, of another organisation, or not theirs to see. Always the same 404 page. */
public class NotFound extends RuntimeException {

    public NotFound() {
        super("not found");
    }
}
