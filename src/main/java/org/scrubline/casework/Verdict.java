package org.scrubline.casework;

/** What a case says about the supervision it showed to be enough. Never a verdict on a person. */
public enum Verdict {
    NOT_YET_SAFE,
    INDEPENDENT,
    SAFE_WITH_SUPERVISOR_SCRUBBED,
    NO_VERDICT;

    /** Message key of the phrase. */
    public String messageKey() {
        return "verdict." + name();
    }
}
