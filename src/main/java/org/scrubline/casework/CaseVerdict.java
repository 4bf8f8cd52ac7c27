package org.scrubline.casework;

import java.util.List;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Rubric;

/**
 * The verdict of a sheet with its reasons in words.
 *
 * @param verdict see {@link Verdict}
 * @param reasons sentences by message key, the deciding ones first
 */
public record CaseVerdict(Verdict verdict, List<Refusal> reasons) {

    public CaseVerdict {
        reasons = List.copyOf(reasons);
    }

    /** Evaluates a sheet against its rubric. */
    public static CaseVerdict of(Rubric rubric, EventCatalogue catalogue, Sheet sheet) {
        return new VerdictRule(rubric, catalogue, sheet).evaluate();
    }
}
