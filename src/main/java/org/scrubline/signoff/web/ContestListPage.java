package org.scrubline.signoff.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.signoff.web.VersionsView.Link;

/**
 * Contests of one person.
 *
 * @param yours those that wait for this person
 * @param open the others that are not decided
 * @param ended decided, taken back or ended by a void
 * @param voids void requests that wait for this person
 */
record ContestListPage(List<Line> yours, List<Line> open, List<Line> ended, List<Link> voids) {

    /** Nothing at all to show. */
    public boolean empty() {
        return yours.isEmpty() && open.isEmpty() && ended.isEmpty() && voids.isEmpty();
    }

    /** A contest; {@code due} is null once it has ended. */
    record Line(
            String href,
            String title,
            String note,
            String state,
            @Nullable String due,
            boolean overdue) {}
}
