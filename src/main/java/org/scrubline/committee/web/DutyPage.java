package org.scrubline.committee.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What waits in one programme.
 *
 * @param directs whether the reader directs it, and sees more than the letters
 * @param suspended what is suspended, with where to reinstate it
 */
record DutyPage(
        String programme,
        boolean directs,
        List<Letter> letters,
        List<Link> appeals,
        List<Line> reviews,
        List<Line> gaps,
        List<Line> suspended) {

    /** A letter to give; {@code read} opens it for who may. */
    record Letter(
            String text,
            boolean overdue,
            String given,
            @Nullable String read) {}

    /** Something about a trainee and what can be done about it. */
    record Line(String text, @Nullable Link act) {}
}
