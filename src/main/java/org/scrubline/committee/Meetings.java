package org.scrubline.committee;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;

/**
 * Plans and runs meetings. Directors, committee members and administrators of the programme see them; everyone else is
 * answered {@code NotFound}, and so is who asks for a deed that is somebody else's.
 */
public interface Meetings {

    /** Longest reason of a declared conflict in characters. */
    int REASON_LENGTH = 300;

    /** Those of the programmes this person sees, the newest first. */
    List<Meeting> of(SignedIn who);

    Meeting read(SignedIn who, UUID meetingId);

    /** Programmes in which this person may plan a meeting: those they direct or administer. */
    List<Programme> planning(SignedIn who);

    /** Who could be invited: directors and committee members of the programme. */
    List<Person> invitable(SignedIn who, UUID programmeId);

    /** Whom a meeting could speak about: the programme's trainees. */
    List<Person> trainees(SignedIn who, UUID programmeId);

    /** Plans a meeting; the fields of a refusal are {@code at}, {@code members}, {@code chair} and {@code trainees}. */
    Attempt<Meeting> plan(SignedIn who, UUID programmeId, MeetingPlan plan);

    /** Invites more members or adds trainees while it is planned or open; whoever is there already stays as they are. */
    Attempt<Meeting> extend(SignedIn who, UUID meetingId, List<UUID> members, List<UUID> trainees);

    /** Another chair, named by a director among the invited. */
    Attempt<Meeting> chair(SignedIn who, UUID meetingId, UUID personId);

    /** Opens, closes or cancels it. The chair or a director opens and closes; a director or administrator cancels. */
    Attempt<Meeting> move(SignedIn who, UUID meetingId, MeetingState next);

    /** Who is there, for an open meeting; written by the chair, a director or an administrator. */
    Attempt<Meeting> presence(SignedIn who, UUID meetingId, Set<UUID> present);

    /** A member says not to be free about a trainee, or the chair or a director writes it down for a member. */
    Attempt<Meeting> declareConflict(SignedIn who, UUID meetingId, UUID memberId, UUID traineeId, String reason);
}
