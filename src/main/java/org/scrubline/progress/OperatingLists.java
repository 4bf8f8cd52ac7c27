package org.scrubline.progress;

import java.util.List;
import org.scrubline.platform.SignedIn;

/** What the signed sheets say about the cases of the next day, for the people who will operate. */
public interface OperatingLists {

    /** Planned cases a supervisor will score, by day; what a trainee's sheets point to is read a day ahead at most. */
    List<ListedCase> ofSupervisor(SignedIn who);

    /** A trainee's own planned cases, each with what the own sheets point to. */
    List<ListedCase> ofTrainee(SignedIn who);
}
