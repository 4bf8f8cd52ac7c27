package org.scrubline.people;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/** The programmes somebody directs or administers. */
@Component
public class LedProgrammes {

    private final People people;

    LedProgrammes(People people) {
        this.people = people;
    }

    public static boolean leads(SignedIn who, UUID programme) {
        return who.has(Role.DIRECTOR, programme) || who.has(Role.ADMINISTRATOR, programme);
    }

    /**
     * The programme asked for, or the first by name.
     *
     * @param programme null for whichever comes first
     * @throws NotFound when this person leads no such programme
     */
    public Programme of(SignedIn who, @Nullable UUID programme) {
        return people.programmes().stream()
                .filter(one -> leads(who, one.id()))
                .filter(one -> programme == null || one.id().equals(programme))
                .findFirst()
                .orElseThrow(NotFound::new);
    }
}
