package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Rubric;

/**
 * The steps of a case for the trainee's own levels.
 *
 * @param caseHref the case
 * @param caseTitle reference and procedure
 * @param locked whether a supervisor has signed, so that it may only be read
 */
record SelfScorePage(
        String caseHref,
        String caseTitle,
        boolean locked,
        List<Wording.FormError> errors,
        List<ScoredPhases.PhaseOfSteps> phases) {

    static SelfScorePage of(
            String caseHref,
            String caseTitle,
            boolean locked,
            List<Wording.FormError> errors,
            Rubric rubric,
            Map<String, Integer> levels) {
        return new SelfScorePage(caseHref, caseTitle, locked, errors, ScoredPhases.of(rubric, levels, locked));
    }
}
