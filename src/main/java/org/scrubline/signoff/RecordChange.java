package org.scrubline.signoff;

import org.scrubline.signoff.RecordState.Answer;
import org.scrubline.signoff.RecordState.Contest;
import org.scrubline.signoff.RecordState.Countersignature;
import org.scrubline.signoff.RecordState.Voiding;

/** The same state with some of it changed. */
final class RecordChange {

    private final RecordState from;
    private boolean opened;
    private boolean released;
    private int versions;
    private Countersignature countersignature;
    private Answer answer;
    private boolean versionOpen;
    private Voiding voiding;
    private Contest contest;
    private boolean delegated;

    RecordChange(RecordState from) {
        this.from = from;
        opened = from.opened();
        released = from.released();
        versions = from.versions();
        countersignature = from.countersignature();
        answer = from.answer();
        versionOpen = from.versionOpen();
        voiding = from.voiding();
        contest = from.contest();
        delegated = from.delegated();
    }

    RecordChange opened() {
        opened = true;
        return this;
    }

    RecordChange released() {
        released = true;
        return this;
    }

    /** A version starts with neither countersignature nor answer, whatever the one before had. */
    RecordChange signed(boolean countersign) {
        versions = from.versions() + 1;
        countersignature = countersign ? Countersignature.AWAITED : Countersignature.NOT_NEEDED;
        answer = Answer.NONE;
        versionOpen = false;
        delegated = false;
        return this;
    }

    RecordChange countersigned() {
        countersignature = Countersignature.GIVEN;
        return this;
    }

    RecordChange answer(Answer value) {
        answer = value;
        return this;
    }

    RecordChange versionOpen(boolean value) {
        versionOpen = value;
        return this;
    }

    RecordChange voiding(Voiding value) {
        voiding = value;
        return this;
    }

    /** Nothing stays open on a sheet that is void. */
    RecordChange voided() {
        versionOpen = false;
        contest = Contest.NONE;
        delegated = false;
        return voiding(Voiding.VOID);
    }

    RecordChange contest(Contest value) {
        contest = value;
        return this;
    }

    RecordChange delegated() {
        delegated = true;
        return this;
    }

    RecordState done() {
        return new RecordState(
                opened, released, versions, countersignature, answer, versionOpen, voiding, contest, delegated);
    }
}
