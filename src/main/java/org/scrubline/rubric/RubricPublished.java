package org.scrubline.rubric;

import java.util.UUID;
import org.scrubline.platform.Audited;

/**
 * A rubric version was published.
 *
 * @param after hash of its content
 */
record RubricPublished(UUID actor, Item item, String after) implements Audited {

    static RubricPublished of(PublishedRubric published, UUID publisher) {
        Rubric rubric = published.rubric();
        return new RubricPublished(
                publisher,
                new Item("rubric", published.id(), null, rubric.title() + " " + rubric.version()),
                "sha256:" + published.contentHash());
    }

    @Override
    public String action() {
        return "rubric-published";
    }
}
