package org.scrubline.casework;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/**
 * Who may see a case, and how much of it: its trainees with the sheets about them, its scorers with their own sheets,
 * directors of the programme with all.
 */
@Component
class CaseAccess {

    private final CaseQueries queries;

    CaseAccess(CaseQueries queries) {
        this.queries = queries;
    }

    boolean granted(SignedIn who, SurgicalCase found) {
        return file(who, found).isPresent();
    }

    /** The case as this person may see it; empty for everyone without a part in it. */
    Optional<CaseFile> file(SignedIn who, SurgicalCase found) {
        UUID reader = who.personId();
        boolean director = who.has(Role.DIRECTOR, found.programmeId());
        List<CaseFile.ScoreRequest> visible = queries.requests(found.id()).stream()
                .filter(request -> director
                        || request.trainee().id().equals(reader)
                        || request.scorer().id().equals(reader))
                .toList();
        CaseFile file =
                new CaseFile(found, queries.participants(found.id()), visible, queries.plannedScorer(found.id()));
        boolean part = director || !visible.isEmpty() || file.hasTrainee(reader) || willScore(file, reader);
        return part ? Optional.of(file) : Optional.empty();
    }

    private static boolean willScore(CaseFile file, UUID reader) {
        return file.surgicalCase().state() == CaseState.PLANNED
                && file.plannedScorer()
                        .filter(scorer -> scorer.id().equals(reader))
                        .isPresent();
    }
}
