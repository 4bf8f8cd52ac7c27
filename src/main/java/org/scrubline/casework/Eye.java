package org.scrubline.casework;

/** The operated eye. */
public enum Eye {
    RIGHT,
    LEFT
}
