package org.scrubline.signoff;

import java.util.ArrayList;
import java.util.List;
import org.scrubline.casework.Verdict;
import org.scrubline.people.Settings;
import org.springframework.stereotype.Component;

/**
 * Whether a version needs countersigning. Two signatures at the same moment may both find themselves the tenth or the
 * first; both are countersigned then, which errs on the safe side.
 */
@Component
class CountersignRule {

    private final CountersignQueries queries;
    private final Settings settings;

    CountersignRule(CountersignQueries queries, Settings settings) {
        this.queries = queries;
        this.settings = settings;
    }

    /** The reasons as things stand in the running transaction; empty when none is needed. */
    List<CountersignReason> reasons(SheetContent content) {
        List<CountersignReason> reasons = new ArrayList<>();
        if (queries.signedBefore(
                        content.operation().programme(), content.signer().id(), content.sheet())
                < settings.of(content.operation().programme()).newScorerUntil()) {
            reasons.add(CountersignReason.NEW_SCORER);
        }
        if (content.events().stream().anyMatch(SheetContent.EventLine::blocking)) {
            reasons.add(CountersignReason.BLOCKING_EVENT);
        }
        if (content.verdict().verdict() == Verdict.INDEPENDENT
                && !queries.independentBefore(
                        content.trainee().id(), content.rubric().procedure(), content.sheet())) {
            reasons.add(CountersignReason.FIRST_INDEPENDENT);
        }
        return List.copyOf(reasons);
    }
}
