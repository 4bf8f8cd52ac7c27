package org.scrubline.rubric;

import org.scrubline.platform.CanonicalJson;

/**
 * A rubric as canonical JSON (RFC 8785) and its SHA-256: the same content gives the same bytes everywhere.
 *
 * @param json the canonical text
 * @param hash SHA-256 of its UTF-8 bytes, lower-case hexadecimal
 */
record RubricContent(String json, String hash) {

    static RubricContent of(Rubric rubric) {
        String json = CanonicalJson.of(rubric);
        return new RubricContent(json, CanonicalJson.sha256(json));
    }

    /** The rubric in this content. Content that does not have this hash was changed past the server: a bug or worse. */
    Rubric rubric() {
        if (!CanonicalJson.sha256(json).equals(hash)) {
            throw new IllegalStateException("The stored rubric does not have its hash " + hash);
        }
        return CanonicalJson.read(json, Rubric.class);
    }
}
