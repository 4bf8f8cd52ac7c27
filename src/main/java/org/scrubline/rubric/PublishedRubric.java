package org.scrubline.rubric;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;

/**
 * A rubric as a programme published it; it never changes.
 *
 * @param id of this version in the programme
 * @param rubric its content
 * @param contentHash SHA-256 of the canonical JSON (RFC 8785) of the content, lower-case hexadecimal
 * @param publishedAt when
 * @param effectiveFrom from when on new cases are scored with it, not before {@code publishedAt}
 * @param zone in which that is the beginning of a day; UTC for a version in use from its publication
 */
public record PublishedRubric(
        UUID id, Rubric rubric, String contentHash, Instant publishedAt, Instant effectiveFrom, ZoneId zone) {}
