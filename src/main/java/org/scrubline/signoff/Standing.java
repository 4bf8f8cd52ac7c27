package org.scrubline.signoff;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetState;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;

/**
 * Where a signed sheet stands, and what stands against going on from there. Who may ask at all is answered apart, because
 * for everyone else the question does not exist.
 *
 * @param newest its newest signed version
 * @param voids who asked for it to be void, oldest first
 * @param contests of any of its versions
 * @param settings of its programme now
 */
record Standing(
        Sheet sheet,
        SignedSheet newest,
        VersionAuthority authority,
        List<VoidFile> voids,
        List<ContestFile> contests,
        ProgrammeSettings settings,
        Instant now) {

    boolean isTrainee(SignedIn who) {
        return newest.traineeId().equals(who.personId());
    }

    boolean isVoid() {
        return sheet.state() == SheetState.VOID;
    }

    Optional<VoidFile> pendingVoid() {
        return voids.stream().filter(VoidFile::pending).findFirst();
    }

    /** Whether this person may write and sign the next version. */
    boolean mayWrite(SignedIn who) {
        return isAuthority(who.personId()) && who.has(Role.SUPERVISOR, newest.programmeId());
    }

    boolean isAuthority(UUID person) {
        return authority.personId().equals(person);
    }

    boolean isWriting(SignedIn who) {
        return sheet.state() == SheetState.REOPENED && sheet.editorId().equals(who.personId());
    }

    /** Whether this person may ask for the record to be void, or decide when somebody else asked. */
    boolean mayVoid(SignedIn who) {
        return !isTrainee(who) && (newest.signerId().equals(who.personId()) || directs(who));
    }

    boolean directs(SignedIn who) {
        return who.has(Role.DIRECTOR, newest.programmeId());
    }

    /** In which role somebody speaks who may void: a director who scored speaks as the scorer. */
    Role voidRole(SignedIn who) {
        return newest.signerId().equals(who.personId()) ? Role.SUPERVISOR : Role.DIRECTOR;
    }

    Optional<Refusal> againstVersion() {
        return againstVoid().or(() -> pendingVoid().map(waiting -> Refusal.of("signoff.refusal.void-waiting")));
    }

    Optional<Refusal> againstVoidRequest() {
        return againstVersion();
    }

    Optional<Refusal> againstContest() {
        if (isVoid()) {
            return againstVoid();
        }
        if (contests.stream().anyMatch(ContestFile::open)) {
            return Optional.of(Refusal.of("signoff.refusal.contest-open"));
        }
        if (contests.stream().anyMatch(contest -> contest.recordId().equals(newest.id()))) {
            return Optional.of(Refusal.of("signoff.refusal.contest-once"));
        }
        return now.isAfter(contestableUntil())
                ? Optional.of(Refusal.of(
                        "signoff.refusal.contest-late", settings.contestWithin().toDays()))
                : Optional.empty();
    }

    Instant contestableUntil() {
        return newest.receivedAt().plus(settings.contestWithin());
    }

    private Optional<Refusal> againstVoid() {
        return isVoid() ? Optional.of(Refusal.of("signoff.refusal.void")) : Optional.empty();
    }
}
