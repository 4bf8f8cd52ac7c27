package org.scrubline.access;

import java.util.Locale;

/** How a person stands to the records of the matrix. */
enum Relation {
    /** The person the record is about, or who scored it. */
    OWN,
    /** Somebody else of the same programme. */
    PROGRAMME,
    /** Somebody of another programme of the same organisation. */
    OTHER_PROGRAMME,
    /** Somebody of another organisation. */
    OTHER_ORGANISATION;

    boolean foreign() {
        return this == OTHER_PROGRAMME || this == OTHER_ORGANISATION;
    }

    static Relation of(String written) {
        return valueOf(written.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    String written() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
