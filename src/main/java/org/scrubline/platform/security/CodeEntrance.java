package org.scrubline.platform.security;

import org.scrubline.platform.factor.SecondFactors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Puts the second page of a log-in together; what it holds are no beans, as with {@link PasskeyEntrance}. */
@Component
class CodeEntrance {

    private final EntryRule rule;
    private final SecondFactors factors;
    private final LoginOutcomes outcomes;
    private final ApplicationEventPublisher events;

    CodeEntrance(EntryRule rule, SecondFactors factors, LoginOutcomes outcomes, ApplicationEventPublisher events) {
        this.rule = rule;
        this.factors = factors;
        this.outcomes = outcomes;
        this.events = events;
    }

    EntryFilter guard() {
        return new EntryFilter(rule);
    }

    CodeLogInFilter filter() {
        CodeLogInFilter filter = new CodeLogInFilter(factors, outcomes);
        filter.setApplicationEventPublisher(events);
        return filter;
    }
}
