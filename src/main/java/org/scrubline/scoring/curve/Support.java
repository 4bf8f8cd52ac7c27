package org.scrubline.scoring.curve;

/** What the evidence says on one standard; the words a page may use. A person decides. */
public enum Support {
    SUPPORTS("evidence supports"),
    NOT_YET("does not yet support"),
    INSUFFICIENT("insufficient evidence");

    private final String words;

    Support(String words) {
        this.words = words;
    }

    /** The phrase a page shows. */
    public String words() {
        return words;
    }
}
