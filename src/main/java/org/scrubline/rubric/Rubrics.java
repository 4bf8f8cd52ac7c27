package org.scrubline.rubric;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;

/** The rubrics an organisation has published. A published version never changes; other content is another version. */
public interface Rubrics {

    /** Every published version, procedures in the order of {@link Procedures#ALL}, newest version first. */
    List<PublishedRubric> published();

    /**
     * The version to score new cases with: of those in force by now, the one that came into force last. It stays known
     * when its procedure is retired, so that old cases can be named; see {@link #takingCases}.
     *
     * @throws NotFound when none of this procedure is in force
     */
    PublishedRubric current(String procedure);

    /** The {@link #current} version of every procedure that has one, in the order of {@link Procedures#ALL}. */
    List<PublishedRubric> inForce();

    Optional<PublishedRubric> byId(UUID id);

    /** The procedures a new case can be logged for: with a version in force and not retired. */
    Set<String> takingCases();

    /**
     * Publishes a version, in force at once unless the caller fixes a later day. The same content again changes nothing and gives the version already there; other content
     * under a version that exists is refused.
     *
     * @param publisher the person who publishes
     */
    Attempt<PublishedRubric> publish(Rubric rubric, UUID publisher);

    /** Publishes every rubric of the shipped library, or none when one of them is refused. */
    Attempt<List<PublishedRubric>> publishLibrary(UUID publisher);
}
