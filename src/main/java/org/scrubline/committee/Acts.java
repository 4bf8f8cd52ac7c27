package org.scrubline.committee;

import java.util.List;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;

/**
 * What follows a decision: the letter, and an appeal with the people who hear it. Everything here answers
 * {@code NotFound} for what this person may not read or what is somebody else's to do; what is sent again is answered
 * with the first.
 */
public interface Acts {

    /**
     * Records that the letter was given to the trainee, from which day the time for an appeal runs. A director, an
     * administrator or whoever signed the decision does; the letter need not be read for it.
     */
    Attempt<Act> sendLetter(SignedIn who, UUID decisionId);

    /** The trainee appeals, with a reason, before the time is over. */
    Attempt<Act> appeal(SignedIn trainee, UUID decisionId, Signature signature);

    /**
     * Who could hear an appeal: directors and committee members of any programme of the organisation and supervisors of
     * this one, without those who were at the decision, the trainee and who declared a conflict about the trainee.
     */
    List<Person> hearers(SignedIn director, UUID decisionId);

    /** A director names who hears the appeal, or others while nothing is decided; a text is not needed. */
    Attempt<Act> namePanel(SignedIn director, UUID decisionId, List<UUID> persons, Signature signature);

    /**
     * One of the panel signs for it, with a reason. Upheld, the matter goes back to a committee; until that decides, what
     * was decided holds, with its mark.
     */
    Attempt<Act> decideAppeal(SignedIn hearer, UUID decisionId, boolean upheld, Signature signature);

    /** The trainee ends the appeal; a text is not needed. */
    Attempt<Act> endAppeal(SignedIn trainee, UUID decisionId, Signature signature);

    /** What this person may do about a decision now. */
    List<ActKind> next(SignedIn who, DecisionFile file);
}
