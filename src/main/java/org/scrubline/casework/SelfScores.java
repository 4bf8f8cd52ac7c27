package org.scrubline.casework;

import java.util.Map;
import java.util.UUID;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;

/** What trainees thought of their own steps before they read the supervisor's levels. */
public interface SelfScores {

    /**
     * The rubric a case is scored with.
     *
     * @throws org.scrubline.platform.NotFound while no supervisor has been asked to score it
     */
    Rubric rubric(UUID caseId);

    /** Levels 1 to 5 by step code; a step without one was left out. */
    Map<String, Integer> of(UUID caseId, UUID traineeId);

    /** The same for every case of a trainee that has any. */
    Map<UUID, Map<String, Integer>> ofTrainee(UUID traineeId);

    /** Whether a supervisor has signed a sheet about this trainee in this case, so that nothing more can be changed. */
    boolean locked(UUID caseId, UUID traineeId);

    /**
     * Keeps these levels in place of all earlier ones.
     *
     * @param levels level by step code of the rubric the case is scored with
     * @return how many steps have a level, or why nothing was changed
     * @throws org.scrubline.platform.NotFound unless {@code who} is a trainee of this case and it can be scored
     */
    Attempt<Integer> save(SignedIn who, UUID caseId, Map<String, Integer> levels);
}
