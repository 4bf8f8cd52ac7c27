package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.List;

/** Keeps the first findings and counts all: a ledger that was rewritten has as many as it has leaves. */
final class Findings {

    static final int KEPT = 100;

    private final List<Finding> kept = new ArrayList<>();
    private long count;

    void add(Problem problem, String kind, Object... arguments) {
        if (kept.size() < KEPT) {
            kept.add(Finding.of(problem, kind, arguments));
        }
        count++;
    }

    List<Finding> kept() {
        return List.copyOf(kept);
    }

    long count() {
        return count;
    }
}
