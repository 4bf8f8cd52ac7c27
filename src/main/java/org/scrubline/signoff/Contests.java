package org.scrubline.signoff;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;

/**
 * Contests of signed scores: the trainee contests, the scorer replies, a director names a reviewer, the reviewer decides.
 * The score keeps counting meanwhile, with its mark. Everything here answers {@code NotFound} for what this person may
 * not read or what is somebody else's to do; each statement sent again is answered with the first.
 */
public interface Contests {

    /** Most characters of a statement in a contest. */
    int LONGEST_TEXT = 2000;

    /**
     * The contests this person has a part in, the one due first: their own, of what they scored, those they review, and
     * those of programmes they direct or decide for.
     */
    List<ContestFile> of(SignedIn who);

    /** One contest, for the trainee, the scorer, the reviewer, directors and committee members of the programme. */
    ContestFile read(SignedIn who, UUID contestId);

    /**
     * Contests the newest version of a sheet.
     *
     * @param recordId any version of the sheet
     * @param steps codes of steps it is about; empty when it is about the whole sheet
     */
    Attempt<Statement> open(SignedIn trainee, UUID recordId, List<String> steps, Signature signature);

    /** The scorer's one reply, until a reviewer is named. */
    Attempt<Statement> reply(SignedIn scorer, UUID contestId, Signature signature);

    /** Who could review: supervisors without a part in the record or a declared conflict, and not the director asking. */
    List<Person> reviewers(SignedIn director, UUID contestId);

    /** Names the reviewer, or another one while nothing is decided; a text is not needed. */
    Attempt<Statement> nameReviewer(SignedIn director, UUID contestId, UUID reviewer, Signature signature);

    /** The reviewer's decision. Upheld, the reviewer signs the next version in place of the scorer. */
    Attempt<Statement> decide(SignedIn reviewer, UUID contestId, boolean upheld, Signature signature);

    /** The trainee takes the contest back; a text is not needed. */
    Attempt<Statement> withdraw(SignedIn trainee, UUID contestId, Signature signature);

    /** Who decided a contest of any of a trainee's records. For rules about people, not for a page. */
    Set<UUID> reviewersOf(UUID traineeId);

    /** What this person may do in a contest now. */
    List<RecordEvent> next(SignedIn who, ContestFile contest);
}
