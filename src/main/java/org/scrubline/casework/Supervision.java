package org.scrubline.casework;

/** Where the supervisor was, or was meant to be. */
public enum Supervision {
    SCRUBBED,
    IN_ROOM,
    NEARBY
}
