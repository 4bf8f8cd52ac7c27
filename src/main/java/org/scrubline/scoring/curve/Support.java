package org.scrubline.scoring.curve;

/** What the evidence says on one standard; the words a page may use. A person decides. */
public enum Support {
    /** The minimums hold and the assurance is at least the wanted one. */
    SUPPORTS("evidence supports"),
    /** Numbers may be shown and the assurance is below the wanted one. */
    NOT_YET("does not yet support"),
    /**
     * Numbers may not be shown, there is no critical step, or the assurance is reached without the evidence a decision
     * needs.
     */
    INSUFFICIENT("insufficient evidence");

    private final String words;

    Support(String words) {
        this.words = words;
    }

    /** {@return the phrase a page shows} */
    public String words() {
        return words;
    }
}
