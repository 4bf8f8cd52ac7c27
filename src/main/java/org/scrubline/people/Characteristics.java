package org.scrubline.people;

import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * What trainees said about themselves, kept apart from everything else. They read and change their own answers; an analyst
 * of the programme reads them to make tables in which small numbers are hidden. Nobody else does, and no number about a
 * trainee rests on them.
 */
public interface Characteristics {

    /** Own answers; what was not said is absent. */
    Map<Characteristic, String> own(SignedIn who);

    /**
     * Keeps these answers in place of all earlier ones.
     *
     * @param answers one of {@link Characteristic#answers()} each; absent takes the earlier one back
     * @return how many were said, or why nothing was changed; the field is the name of the characteristic
     * @throws org.scrubline.platform.NotFound for whoever is no trainee
     */
    Attempt<Integer> say(SignedIn who, Map<Characteristic, String> answers);

    /**
     * The answers of everyone who said something, by person.
     *
     * @throws org.scrubline.platform.NotFound for whoever is no analyst of the programme
     */
    Map<UUID, Map<Characteristic, String>> ofTrainees(SignedIn analyst, UUID programmeId);
}
