package org.scrubline.signoff;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Where one sheet stands after what has happened to it. Pure: it knows the order of events, not people or times.
 *
 * @param opened a supervisor has taken it up
 * @param released a director let it be signed late
 * @param versions number of signed versions; the last one counts
 * @param countersignature of the last version
 * @param answer of the trainee to the last version
 * @param versionOpen the next version is being written
 * @param voiding whether it is, or is asked to be, out of all numbers
 * @param contest how far a contest is
 * @param delegated somebody other than the scorer may sign the next version
 */
public record RecordState(
        boolean opened,
        boolean released,
        int versions,
        Countersignature countersignature,
        Answer answer,
        boolean versionOpen,
        Voiding voiding,
        Contest contest,
        boolean delegated) {

    /** Of one version. */
    public enum Countersignature {
        NOT_NEEDED,
        AWAITED,
        GIVEN
    }

    /** Of the trainee to one version. */
    public enum Answer {
        NONE,
        NOT_ACKNOWLEDGED,
        ACKNOWLEDGED
    }

    /** Of the whole sheet. */
    public enum Voiding {
        NONE,
        ASKED,
        VOID
    }

    /** Of the whole sheet; one that ended leaves none. */
    public enum Contest {
        NONE,
        OPEN,
        REPLIED,
        REVIEWER_NAMED
    }

    /** Before anything happened. */
    public static final RecordState BEFORE = new RecordState(
            false, false, 0, Countersignature.NOT_NEEDED, Answer.NONE, false, Voiding.NONE, Contest.NONE, false);

    /**
     * One thing that happened.
     *
     * @param countersign whether the version signed by it needs a countersignature; false for all that sign no version
     */
    public record Happened(RecordEvent event, boolean countersign) {

        public static Happened of(RecordEvent event) {
            return new Happened(event, false);
        }
    }

    /**
     * Where a sheet stands after these events.
     *
     * @throws IllegalStateException when one of them could not follow the others
     */
    public static RecordState after(List<Happened> events) {
        RecordState state = BEFORE;
        for (Happened happened : events) {
            state = state.then(happened);
        }
        return state;
    }

    /** What may happen next; whom it may come from is {@link RecordEvent#parties}. */
    public Set<RecordEvent> next() {
        return Arrays.stream(RecordEvent.values()).filter(this::allows).collect(Collectors.toUnmodifiableSet());
    }

    /** Whether this may happen next, and come from somebody who stands so to the sheet. */
    public boolean allows(RecordEvent event, RecordParty party) {
        boolean stands = party != RecordParty.DELEGATE || delegated;
        return stands && event.parties().contains(party) && allows(event);
    }

    /** Whether this may happen next. */
    public boolean allows(RecordEvent event) {
        return switch (event) {
            case OPENED -> !opened;
            case LATE_RELEASED -> unsigned() && !released;
            case SIGNED -> unsigned();
            case COUNTERSIGNED, COUNTERSIGN_REFUSED -> counts() && countersignature == Countersignature.AWAITED;
            case ACKNOWLEDGED -> counts() && answer != Answer.ACKNOWLEDGED;
            case NOT_ACKNOWLEDGED -> counts() && answer == Answer.NONE;
            case VERSION_OPENED -> counts() && !versionOpen;
            case VERSION_DROPPED, VERSION_SIGNED -> counts() && versionOpen;
            case VOID_ASKED -> counts() && voiding == Voiding.NONE;
            case VOID_CONFIRMED, VOID_DECLINED -> voiding == Voiding.ASKED;
            case CONTEST_OPENED -> counts() && contest == Contest.NONE;
            case CONTEST_REPLIED -> counts() && contest == Contest.OPEN;
            case REVIEWER_NAMED -> counts() && (contest == Contest.OPEN || contest == Contest.REPLIED);
            case CONTEST_UPHELD, CONTEST_NOT_UPHELD -> counts() && contest == Contest.REVIEWER_NAMED;
            case CONTEST_WITHDRAWN -> counts() && contest != Contest.NONE;
        };
    }

    private boolean unsigned() {
        return opened && versions == 0;
    }

    /** Signed and not void. */
    public boolean counts() {
        return versions > 0 && voiding != Voiding.VOID;
    }

    /**
     * Where the sheet stands once this has happened too.
     *
     * @throws IllegalStateException when it may not happen now
     */
    public RecordState then(Happened happened) {
        RecordEvent event = happened.event();
        if (!allows(event)) {
            throw new IllegalStateException(event + " cannot follow " + this);
        }
        return switch (event) {
            case OPENED -> new RecordChange(this).opened().done();
            case LATE_RELEASED -> new RecordChange(this).released().done();
            case SIGNED, VERSION_SIGNED ->
                new RecordChange(this).signed(happened.countersign()).done();
            case COUNTERSIGNED -> new RecordChange(this).countersigned().done();
            case COUNTERSIGN_REFUSED -> this;
            case ACKNOWLEDGED ->
                new RecordChange(this).answer(Answer.ACKNOWLEDGED).done();
            case NOT_ACKNOWLEDGED ->
                new RecordChange(this).answer(Answer.NOT_ACKNOWLEDGED).done();
            case VERSION_OPENED -> new RecordChange(this).versionOpen(true).done();
            case VERSION_DROPPED -> new RecordChange(this).versionOpen(false).done();
            case VOID_ASKED -> new RecordChange(this).voiding(Voiding.ASKED).done();
            case VOID_CONFIRMED -> new RecordChange(this).voided().done();
            case VOID_DECLINED -> new RecordChange(this).voiding(Voiding.NONE).done();
            case CONTEST_OPENED -> new RecordChange(this).contest(Contest.OPEN).done();
            case CONTEST_REPLIED ->
                new RecordChange(this).contest(Contest.REPLIED).done();
            case REVIEWER_NAMED ->
                new RecordChange(this).contest(Contest.REVIEWER_NAMED).done();
            case CONTEST_UPHELD ->
                new RecordChange(this).contest(Contest.NONE).delegated().done();
            case CONTEST_NOT_UPHELD, CONTEST_WITHDRAWN ->
                new RecordChange(this).contest(Contest.NONE).done();
        };
    }
}
