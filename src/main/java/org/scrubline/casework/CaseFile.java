package org.scrubline.casework;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A case as one reader may see it.
 *
 * @param trainees everyone who took part as a trainee
 * @param requests sheets the reader may know of: a trainee's own, a scorer's own, all of them for a director
 * @param plannedScorer who will be asked once a planned case has ended
 */
public record CaseFile(
        SurgicalCase surgicalCase,
        List<Participant> trainees,
        List<ScoreRequest> requests,
        Optional<Named> plannedScorer) {

    /** A person by printed name. */
    public record Named(UUID id, String name) {}

    /** A trainee on the case, the part claimed and what the trainee wants to work on, empty when nothing was said. */
    public record Participant(UUID traineeId, String name, Part claimedPart, String goal) {}

    /**
     * One supervisor asked to score one trainee.
     *
     * @param untouched nothing has been said on the sheet yet, so it may still be handed on
     * @param removedAfter days without a change after which the sheet was removed; null while it is there
     */
    public record ScoreRequest(
            UUID sheetId,
            Named trainee,
            Named scorer,
            SheetState state,
            boolean untouched,
            @Nullable Integer removedAfter) {

        /** Whether it was signed, so that the facts of its case stay. */
        public boolean settled() {
            return state == SheetState.SIGNED || state == SheetState.VOID;
        }
    }

    public CaseFile {
        trainees = List.copyOf(trainees);
        requests = List.copyOf(requests);
    }

    /** Whether this person is one of the trainees. */
    public boolean hasTrainee(UUID personId) {
        return trainees.stream().anyMatch(trainee -> trainee.traineeId().equals(personId));
    }
}
