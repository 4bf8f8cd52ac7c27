package org.scrubline.casework;

/** What the trainee did of the case: a claim when logged, a fact once the supervisor confirms it. */
public enum Part {
    WHOLE_CASE,
    PARTS,
    ASSISTED
}
