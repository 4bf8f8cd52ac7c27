package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What waits for a countersignature. */
@Service
@Transactional(readOnly = true)
class CountersignLists {

    private final CountersignQueries queries;
    private final SignedLineQueries lines;

    CountersignLists(CountersignQueries queries, SignedLineQueries lines) {
        this.queries = queries;
        this.lines = lines;
    }

    List<SignedLine> of(SignedIn supervisor) {
        return lines.chosen(queries.forSupervisor(supervisor.personId()));
    }

    List<SignedLine> led(SignedIn director) {
        List<UUID> waiting = director.grants().stream()
                .filter(grant -> grant.role() == Role.DIRECTOR)
                .flatMap(grant -> queries.ofProgramme(grant.programmeId()).stream())
                .toList();
        return lines.chosen(waiting);
    }
}
