package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.signoff.SheetContent.Named;

/**
 * A contest with everything said in it.
 *
 * @param programmeId of the case
 * @param scorer who signed the contested version
 * @param procedure title of the rubric
 * @param reference reference of the case
 * @param dueAt by when it should have ended
 * @param voided the record it is about is void, which ends it too
 * @param opened the trainee's statement
 * @param steps what was said since, oldest first
 */
public record ContestFile(
        UUID programmeId,
        Named scorer,
        String procedure,
        String reference,
        Instant dueAt,
        boolean voided,
        Statement opened,
        List<Statement> steps) {

    public ContestFile {
        steps = List.copyOf(steps);
    }

    public UUID id() {
        return opened.id();
    }

    public UUID sheetId() {
        return opened.content().sheet();
    }

    /** The signed version contested. */
    public UUID recordId() {
        return opened.content().record().id();
    }

    public Named trainee() {
        return new Named(
                opened.content().signer().id(), opened.content().signer().name());
    }

    public ContestState state() {
        if (said(RecordEvent.CONTEST_WITHDRAWN).isPresent()) {
            return ContestState.WITHDRAWN;
        }
        if (said(RecordEvent.CONTEST_UPHELD).isPresent()) {
            return ContestState.UPHELD;
        }
        if (said(RecordEvent.CONTEST_NOT_UPHELD).isPresent()) {
            return ContestState.NOT_UPHELD;
        }
        if (said(RecordEvent.REVIEWER_NAMED).isPresent()) {
            return ContestState.IN_REVIEW;
        }
        return said(RecordEvent.CONTEST_REPLIED).isPresent() ? ContestState.REPLIED : ContestState.OPEN;
    }

    /** Nothing is decided and the record still counts. */
    public boolean open() {
        return !voided && !state().ended();
    }

    /** The reviewer named last. */
    public Optional<Named> reviewer() {
        return said(RecordEvent.REVIEWER_NAMED).map(named -> named.content().person());
    }

    /** The newest statement of that kind. */
    public Optional<Statement> said(RecordEvent kind) {
        return steps.stream().filter(step -> step.kind() == kind).reduce((older, newer) -> newer);
    }

    /** The statement that ended it. */
    public Optional<Statement> end() {
        return state().ended() ? Optional.of(steps.get(steps.size() - 1)) : Optional.empty();
    }
}
