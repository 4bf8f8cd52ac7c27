package org.scrubline.rubric.change;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.format.RubricWriter;

/**
 * The open draft of a procedure's next version.
 *
 * @param source its text in the file format, faults and all
 * @param lockNo changes with every save
 * @param authors everyone who ever saved it
 * @param savedByName who saved it last
 */
public record RubricDraft(
        UUID id, String procedure, String source, int lockNo, Set<UUID> authors, String savedByName, Instant savedAt) {

    public RubricDraft {
        authors = Set.copyOf(authors);
    }

    /** A rubric as the text a draft of it has. */
    public static String text(Rubric rubric) {
        return RubricWriter.write(rubric).strip();
    }

    /** SHA-256 of the text, which a review is bound to. */
    public String hash() {
        return CanonicalJson.sha256(source);
    }
}
