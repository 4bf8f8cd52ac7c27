package org.scrubline.casework.web;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What may be said about a case after it was logged, each on its own small page. */
enum CaseChange {
    GOAL,
    PLAN,
    START,
    END,
    SCORERS,
    TRAINEES,
    HAND_ON,
    ABANDON,
    CONVERT;

    /** Last part of the address, and of the message keys. */
    String path() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Optional<CaseChange> at(String path) {
        return Arrays.stream(values())
                .filter(change -> change.path().equals(path))
                .findFirst();
    }
}
