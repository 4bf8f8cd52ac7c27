package org.scrubline.platform.security;

import java.time.Clock;
import org.scrubline.platform.provider.Connections;
import org.scrubline.platform.provider.ProviderAnswers;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Puts the log-in through a provider together; its filters are no beans, as with {@link PasskeyEntrance}. */
@Component
class ProviderEntrance {

    private final Connections connections;
    private final ProviderAnswers answers;
    private final ProviderLogIns logIns;
    private final LogInMarks marks;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ProviderEntrance(
            Connections connections,
            ProviderAnswers answers,
            ProviderLogIns logIns,
            LogInMarks marks,
            ApplicationEventPublisher events,
            Clock clock) {
        this.connections = connections;
        this.answers = answers;
        this.logIns = logIns;
        this.marks = marks;
        this.events = events;
        this.clock = clock;
    }

    ProviderStartFilter start() {
        return new ProviderStartFilter(connections, answers);
    }

    ProviderLogInFilter filter() {
        ProviderLogInFilter filter = new ProviderLogInFilter(connections, answers, logIns, marks, clock);
        filter.setApplicationEventPublisher(events);
        return filter;
    }
}
