package org.scrubline.rubric.web;

import org.jspecify.annotations.Nullable;
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
 * @param procedure code of the procedure
 * @param publishedAt day and minute in UTC
 * @param effectiveFrom day and minute in the zone of its first day, when new cases took it later than that; otherwise null
 * @param hash SHA-256 of the content
 */
record RubricHead(
        String href,
        String procedure,
        String title,
        String familyKey,
        String version,
        int steps,
        int critical,
        String publishedAt,
        @Nullable String effectiveFrom,
        String hash) {

    static RubricHead of(PublishedRubric published) {
        return new RubricHead(
                "/rubrics/" + published.id(),
                published.rubric().procedure(),
                published.rubric().title(),
                "rubric.family." + published.rubric().family(),
                published.rubric().version(),
                published.rubric().steps().size(),
                published.rubric().criticalSteps().size(),
                RubricDays.utc(published.publishedAt()),
                published.effectiveFrom().isAfter(published.publishedAt())
                        ? RubricDays.in(published.zone(), published.effectiveFrom())
                        : null,
                published.contentHash());
    }
}
