package org.scrubline.rubric.web;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.scrubline.rubric.PublishedRubric;

/**
 * What a list and the head of a page say about a published rubric.
 *
 * @param href its page
 * @param title name of the procedure
 * @param familyKey message key of the family
 * @param version such as 1.0
 * @param steps number of steps
 * @param critical number of critical steps
 * @param publishedAt day and minute in UTC
 * @param hash SHA-256 of the content
 */
record RubricHead(
        String href,
        String title,
        String familyKey,
        String version,
        int steps,
        int critical,
        String publishedAt,
        String hash) {

    private static final DateTimeFormatter UTC =
            DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm 'UTC'", Locale.UK).withZone(ZoneOffset.UTC);

    static RubricHead of(PublishedRubric published) {
        return new RubricHead(
                "/rubrics/" + published.id(),
                published.rubric().title(),
                "rubric.family." + published.rubric().family(),
                published.rubric().version(),
                published.rubric().steps().size(),
                published.rubric().criticalSteps().size(),
                UTC.format(published.publishedAt()),
                published.contentHash());
    }
}
