package org.scrubline.signoff.web;

import java.util.List;

/**
 * Two versions of a record side by side.
 *
 * @param left the older one
 * @param changed how many rows differ, in words
 */
record ComparePage(String about, Side left, Side right, String changed, List<Group> groups) {

    /** A version and who signed it. */
    record Side(String title, String href, String signed, String reason) {}

    /** Rows under one heading. */
    record Group(String title, List<Row> rows) {}

    /** One thing in both versions, in words. */
    record Row(String label, String left, String right) {

        /** Whether the two differ. */
        public boolean changed() {
            return !left.equals(right);
        }
    }
}
