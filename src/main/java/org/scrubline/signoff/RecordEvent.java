package org.scrubline.signoff;

import static org.scrubline.signoff.RecordParty.DELEGATE;
import static org.scrubline.signoff.RecordParty.DIRECTOR;
import static org.scrubline.signoff.RecordParty.REVIEWER;
import static org.scrubline.signoff.RecordParty.SCORER;
import static org.scrubline.signoff.RecordParty.SECOND_SUPERVISOR;
import static org.scrubline.signoff.RecordParty.TRAINEE;

import java.util.Set;

/** Everything that can happen to one sheet, with whom it may come from; {@link RecordState} says what follows what. */
public enum RecordEvent {
    /** A supervisor took the sheet up. */
    OPENED(SCORER),
    /** A director let a sheet be signed that had stayed unsigned too long. */
    LATE_RELEASED(DIRECTOR),
    /** The scorer signed the first version. */
    SIGNED(SCORER),
    COUNTERSIGNED(SECOND_SUPERVISOR),
    /** A second supervisor said why they cannot countersign; somebody still may. */
    COUNTERSIGN_REFUSED(SECOND_SUPERVISOR),
    /** The trainee signed that they have read this version. */
    ACKNOWLEDGED(TRAINEE),
    /** The trainee recorded that they do not acknowledge this version; they still may. */
    NOT_ACKNOWLEDGED(TRAINEE),
    VERSION_OPENED(SCORER, DELEGATE),
    VERSION_DROPPED(SCORER, DELEGATE),
    VERSION_SIGNED(SCORER, DELEGATE),
    VOID_ASKED(SCORER, DIRECTOR),
    /** By another person than the one who asked. */
    VOID_CONFIRMED(SCORER, DIRECTOR),
    VOID_DECLINED(SCORER, DIRECTOR),
    CONTEST_OPENED(TRAINEE),
    CONTEST_REPLIED(SCORER),
    REVIEWER_NAMED(DIRECTOR),
    CONTEST_UPHELD(REVIEWER),
    CONTEST_NOT_UPHELD(REVIEWER),
    CONTEST_WITHDRAWN(TRAINEE);

    // A set of Set.of cannot change.
    @SuppressWarnings("ImmutableEnumChecker")
    private final Set<RecordParty> parties;

    RecordEvent(RecordParty... parties) {
        this.parties = Set.of(parties);
    }

    /** Whom it may come from. */
    public Set<RecordParty> parties() {
        return parties;
    }
}
