package org.scrubline.signoff.web;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.signoff.web.VersionsView.Link;

/**
 * One contest.
 *
 * @param about trainee, procedure and case
 * @param state how far it is, in words
 * @param due by when it should have ended and how long is left; null once it has
 * @param overdue the time is up
 * @param ended that the record was voided meanwhile, in words; null otherwise
 * @param said everything that was said, oldest first
 * @param next what the reader may say
 */
record ContestPage(
        String about,
        String state,
        @Nullable String due,
        boolean overdue,
        @Nullable String ended,
        Link record,
        List<Said> said,
        List<Link> next) {

    /** One statement with its signature; {@code facts} say whom or which steps it names. */
    record Said(
            String title,
            String name,
            String role,
            String at,
            String meaning,
            List<String> facts,
            List<String> paragraphs) {}
}
