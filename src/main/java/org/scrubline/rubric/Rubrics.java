package org.scrubline.rubric;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;

/** The rubrics an organisation has published. A published version never changes; other content is another version. */
public interface Rubrics {

    /** Every published version, procedures in the order of {@link Procedures#ALL}, newest version first. */
    List<PublishedRubric> published();

    /**
     * The version to score new cases with: the one published last.
     *
     * @throws NotFound when none of this procedure is published
     */
    PublishedRubric current(String procedure);

    Optional<PublishedRubric> byId(UUID id);

    /**
     * Publishes a version. The same content again changes nothing and gives the version already there; other content
     * under a version that exists is refused.
     *
     * @param publisher the person who publishes
     */
    Attempt<PublishedRubric> publish(Rubric rubric, UUID publisher);

    /** Publishes every rubric of the shipped library, or none when one of them is refused. */
    Attempt<List<PublishedRubric>> publishLibrary(UUID publisher);
}
