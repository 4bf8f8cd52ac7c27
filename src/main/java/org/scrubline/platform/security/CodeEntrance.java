package org.scrubline.platform.security;

import java.time.Clock;
import org.scrubline.platform.factor.SecondFactors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Puts the second page of a log-in together; what it holds are no beans, as with {@link PasskeyEntrance}. */
@Component
class CodeEntrance {

    private final EntryRule rule;
    private final SecondFactors factors;
    private final LoginOutcomes outcomes;
    private final LogInMarks marks;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    CodeEntrance(
            EntryRule rule,
            SecondFactors factors,
            LoginOutcomes outcomes,
            LogInMarks marks,
            ApplicationEventPublisher events,
            Clock clock) {
        this.rule = rule;
        this.factors = factors;
        this.outcomes = outcomes;
        this.marks = marks;
        this.events = events;
        this.clock = clock;
    }

    EntryFilter guard() {
        return new EntryFilter(rule, clock);
    }

    CodeLogInFilter filter() {
        CodeLogInFilter filter = new CodeLogInFilter(factors, outcomes, marks);
        filter.setApplicationEventPublisher(events);
        return filter;
    }
}
