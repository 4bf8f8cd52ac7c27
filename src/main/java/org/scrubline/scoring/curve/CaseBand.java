package org.scrubline.scoring.curve;

import java.util.List;

/** Complexity band of a case, from plain (A) to hardest (D). */
public enum CaseBand {
    /** Plain. */
    A,
    /** Harder than A. */
    B,
    /** Harder than B. */
    C,
    /** Hardest. */
    D;

    /**
     * {@return the cumulative indicators "at least B", "at least C", "at least D", each 0 or 1: each coefficient is
     * then the extra difficulty of one band over the band below it}
     */
    public List<Double> indicators() {
        return List.of(atLeast(B), atLeast(C), atLeast(D));
    }

    private double atLeast(CaseBand band) {
        return compareTo(band) >= 0 ? 1.0 : 0.0;
    }
}
